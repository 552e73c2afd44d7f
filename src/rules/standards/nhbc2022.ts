import { table } from '../clause.js';

const NOGGINGS = 'perimeter noggings asked for as well';

/**
 * NHBC Standards 2022, 9.2.4 table 5: board thickness, greatest timber centres, noggings. Until 2022 the table served walls and
 * ceilings; the edition after splits it, and only its 9.5 mm ceiling rows could be read there. Centres between two rows take the
 * next row up.
 */
export const timberCentres = /* @__PURE__ */ table(
  {
    id: 'nhbc-2022-9.2.4-table-5',
    source: { standard: 'NHBC Standards', edition: '2022', clause: '9.2.4 table 5', standing: 'read' },
    governs: 'board thickness against joist centres, and where noggings are wanted',
  },
  [
    { value: 400, when: { boardThickness: 9.5, orientation: 'across', noggings: false }, note: NOGGINGS },
    { value: 450, when: { boardThickness: 9.5, orientation: 'across', noggings: true }, note: NOGGINGS },
    { value: 450, when: { boardThickness: 12.5, orientation: 'across', noggings: false }, note: NOGGINGS },
    { value: 600, when: { boardThickness: 12.5, orientation: 'across', noggings: true }, note: NOGGINGS },
    {
      value: 600,
      when: { boardThickness: 15, orientation: 'across', noggings: false },
      note: 'perimeter noggings asked for as well, unless the guidance for the joist or the board waives them',
    },
  ],
);

/** NHBC Standards 9.2.4 in the undated current edition: moisture of timber before lining, %. */
export const timberMoisture = {
  id: 'nhbc-current-9.2.4-moisture',
  source: { standard: 'NHBC Standards', edition: 'current, undated', clause: '9.2.4', standing: 'read' },
  governs: 'moisture of the timber before it is lined, at most',
  percent: 20,
} as const;
