/**
 * Exponential and logarithm that give the same last digit on every engine. `Math.exp` and `Math.log` may differ between
 * engines; these use only additions, multiplications and divisions, which IEEE 754 rounds one way. Good to about 1e-15.
 */

const LEAST_EXPONENT = -1022;
/** Powers of two from 2^-1022 to 2^1023: doubling and halving are exact. */
const POWERS = powersOfTwo();
/** ln 2 in two parts, the first with trailing zeros, so that a whole multiple of it is exact. */
const LN2_HIGH = 0.6931471803691238;
const LN2_LOW = 1.9082149292705877e-10;
const HALF_ROOT = Math.SQRT1_2;

function powersOfTwo(): readonly number[] {
  const powers = [1];
  for (let power = 2; Number.isFinite(power); power *= 2) powers.push(power);
  const small: number[] = [];
  for (let power = 0.5; small.length < -LEAST_EXPONENT; power /= 2) small.push(power);
  return [...small.reverse(), ...powers];
}

/** e to the power x; 0 below -700, and the value at 700 above it. */
export function exponential(x: number): number {
  if (!(x > -700)) return 0;
  const bounded = Math.min(x, 700);
  const whole = Math.round(bounded / LN2_HIGH);
  const r = bounded - whole * LN2_HIGH - whole * LN2_LOW;
  // Taylor's series by Horner's rule; |r| is at most half of ln 2, so the thirteenth power is below the last digit.
  const sum =
    1 +
    r *
      (1 +
        (r / 2) *
          (1 +
            (r / 3) *
              (1 +
                (r / 4) *
                  (1 +
                    (r / 5) *
                      (1 +
                        (r / 6) *
                          (1 +
                            (r / 7) *
                              (1 +
                                (r / 8) * (1 + (r / 9) * (1 + (r / 10) * (1 + (r / 11) * (1 + (r / 12) * (1 + r / 13))))))))))));
  return sum * POWERS[whole - LEAST_EXPONENT];
}

/** Natural logarithm; -Infinity at 0 and below. */
export function logarithm(x: number): number {
  if (!(x > 0)) return -Infinity;
  if (x < POWERS[0]) return logarithm(x * 4503599627370496) - 52 * LN2_HIGH - 52 * LN2_LOW;
  let low = 0;
  let high = POWERS.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (POWERS[middle] <= x) low = middle;
    else high = middle - 1;
  }
  let exponent = low + LEAST_EXPONENT;
  let mantissa = x / POWERS[low];
  if (mantissa * HALF_ROOT > 1) {
    mantissa /= 2;
    exponent += 1;
  }
  const s = (mantissa - 1) / (mantissa + 1);
  const q = s * s;
  let sum = 0;
  for (let n = 23; n >= 1; n -= 2) sum = sum * q + 1 / n;
  return exponent * LN2_HIGH + (2 * s * sum + exponent * LN2_LOW);
}
