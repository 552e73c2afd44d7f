import { type BoundCheck, type CertifiedRows, checkBound, isInputError, placeBoards } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { roomToLay } from '../generators/rooms.js';

/** Small rooms with bounds that the layout meets: six that prices prove, and two where some rows took a search. */
const SEEDS = [11, 18, 26, 38, 44, 57, 48, 55];

interface Certified extends BoundCheck {
  readonly name: string;
  readonly boardsBought: number;
}

const certified = SEEDS.map((seed): Certified => {
  const request = roomToLay(seed);
  const { certificate, bound, boardsBought } = placeBoards(request);
  if (certificate === undefined) throw new Error(`room ${seed}: no certificate`);
  return { name: `room ${seed}`, request, certificate, bound, boardsBought };
});

type Priced = Required<CertifiedRows>;
const isPriced = (rows: CertifiedRows): rows is Priced => rows.pieces !== undefined && rows.boards !== undefined;

const holds = ({ request, certificate, bound }: BoundCheck): boolean => checkBound({ request, certificate, bound });

const replaced = <T>(list: readonly T[], at: number, by: T): T[] => list.map((each, index) => (index === at ? by : each));

/** The certificate with the prices of one division changed, for each division that has prices. */
const withPrices = (check: BoundCheck, change: (rows: Priced) => CertifiedRows): BoundCheck[] =>
  check.certificate.divisions.flatMap((rows, at) =>
    isPriced(rows)
      ? [{ ...check, certificate: { ...check.certificate, divisions: replaced(check.certificate.divisions, at, change(rows)) } }]
      : [],
  );

const problemsOf = (check: unknown): string[] => {
  try {
    checkBound(check as BoundCheck);
    return [];
  } catch (error) {
    if (isInputError(error)) return error.problems.map(({ code, path }) => `${code} ${path}`).sort();
    throw error;
  }
};

describe('the certificate of a bound', { timeout: 60_000 }, () => {
  it('is of both kinds in these rooms, and tells each division that has no prices', () => {
    expect(certified.map(({ certificate }) => certificate.kind)).toEqual([
      ...Array.from({ length: 6 }, () => 'prices'),
      ...Array.from({ length: 2 }, () => 'search'),
    ]);
    for (const { name, certificate } of certified) {
      expect(certificate.divisions.every(isPriced), name).toBe(certificate.kind === 'prices');
    }
  });

  it('proves the bound that it came with, and any lower one', () => {
    for (const check of certified) {
      expect(check.bound, check.name).toBe(check.boardsBought);
      expect(holds(check), check.name).toBe(true);
      expect(holds({ ...check, bound: check.bound - 1 }), check.name).toBe(true);
    }
  });

  it('still proves it after JSON', () => {
    for (const check of certified) {
      expect(holds({ ...check, certificate: JSON.parse(JSON.stringify(check.certificate)) }), check.name).toBe(true);
    }
  });

  it('proves no bound above the answer', () => {
    for (const check of certified) expect(holds({ ...check, bound: check.boardsBought + 1 }), check.name).toBe(false);
  });

  it('proves nothing when a piece is priced above the board it fits on', () => {
    for (const check of certified) {
      const raised = withPrices(check, (rows) => ({ ...rows, pieces: replaced(rows.pieces, 0, Math.max(...rows.boards) + 1) }));
      for (const each of raised) expect(holds(each), check.name).toBe(false);
    }
  });

  it('proves nothing when pieces together are priced above the board', () => {
    for (const check of certified) {
      const doubled = withPrices(check, (rows) => ({ ...rows, pieces: rows.pieces.map((price) => 2 * price) }));
      for (const each of doubled) expect(holds(each), check.name).toBe(false);
    }
  });

  it('proves nothing when prices are not whole, though they stand in the same ratio', () => {
    const by = (factor: number) => (price: number) => price * factor;
    for (const check of certified) {
      const parts = withPrices(check, (rows) => {
        const [pieces, boards] = [rows.pieces.map(by(1 + Math.SQRT2)), rows.boards.map(by(1 + Math.SQRT2))];
        expect(pieces.some((price) => !Number.isInteger(price))).toBe(true);
        return { ...rows, pieces, boards };
      });
      for (const each of parts) expect(holds(each), check.name).toBe(false);
    }
  });

  it('proves as much when all prices are three times what they were', () => {
    for (const check of certified) {
      const thrice = (price: number): number => 3 * price;
      const scaled = withPrices(check, (rows) => ({
        ...rows,
        pieces: rows.pieces.map(thrice),
        boards: rows.boards.map(thrice),
      }));
      for (const each of scaled) expect(holds(each), check.name).toBe(true);
    }
  });

  it('proves nothing when a price is left out', () => {
    for (const check of certified) {
      const fewer = withPrices(check, (rows) => ({ ...rows, pieces: rows.pieces.slice(1) }));
      for (const each of fewer) expect(holds(each), check.name).toBe(false);
    }
  });

  it('proves nothing when a division into rows is left out or told otherwise', () => {
    for (const check of certified) {
      const { divisions } = check.certificate;
      for (const at of divisions.keys()) {
        const without = { ...check.certificate, divisions: divisions.filter((_, index) => index !== at) };
        expect(holds({ ...check, certificate: without }), check.name).toBe(false);
        const rowWidths = divisions[at].rowWidths.map((width) => width + 1);
        const other = { ...check.certificate, divisions: replaced(divisions, at, { ...divisions[at], rowWidths }) };
        expect(holds({ ...check, certificate: other }), check.name).toBe(false);
      }
    }
  });

  it('proves nothing of another room', () => {
    for (const [at, check] of certified.entries()) {
      const { certificate } = certified[(at + 1) % certified.length];
      expect(holds({ ...check, certificate }), check.name).toBe(false);
    }
  });

  it('is refused when it is not one', () => {
    const [{ request, certificate, bound }] = certified;
    expect(problemsOf({ request, certificate, bound: 3.5 })).toEqual(['wrong-type bound']);
    expect(problemsOf({ request, certificate, bound: Number.NaN })).toEqual(['not-finite bound']);
    expect(problemsOf({ request, bound })).toEqual(['missing certificate']);
    expect(problemsOf({ request, bound, certificate: { ...certificate, kind: 'faith' } })).toEqual([
      'not-one-of certificate.kind',
    ]);
    expect(problemsOf({ request: { ...request, boards: [] }, certificate, bound })).toEqual(['too-small request.boards']);
    const divisions = [{ rowWidths: ['1200'] }];
    expect(problemsOf({ request, bound, certificate: { ...certificate, divisions } })).toEqual([
      'wrong-type certificate.divisions[0].rowWidths[0]',
    ]);
  });
});
