import { type Finding, finding } from '../rules/finding.js';

/** What the cautions are about: what goes up, and how much of it. */
interface Work {
  /** kg/m2 of new boards. */
  readonly addedMass: number;
  /** kg. */
  readonly heaviestPiece: number;
  readonly liningGiven: boolean;
}

/** Cautions that every plan carries: the library sees numbers, not the ceiling. */
export function cautions({ addedMass, heaviestPiece, liningGiven }: Work): Finding[] {
  return [
    finding('services-unknown', 'warning'),
    finding('load-unchecked', 'warning', { value: addedMass, unit: 'kg/m2' }),
    finding('team-unknown', 'warning', { value: heaviestPiece, unit: 'kg' }),
    ...(liningGiven ? [] : [finding('lining-unknown', 'warning')]),
    finding('survey-missing', 'note'),
    finding('work-at-height', 'note'),
    finding('dust', 'note'),
  ];
}
