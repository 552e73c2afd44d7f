import { type BoardStock, type JoistDescription, type RulesInput, ruleTable, ruleValue, ruleSets } from 'soffitwright';
import type { RoomToLay } from '../generators/rooms.js';
