// The unit a site prefers, beside kPa. Pascals in one: BIPM SI brochure and NIST SP 811 (mmHg, inHg, cmH2O
// conventional; the others exact).
const PASCALS = {
  mmHg: 133.322387415,
  mbar: 100,
  inHg: 3386.389,
  cmH2O: 98.0665,
  psi: 6894.757293168,
  bar: 100000,
};
const PLACES = { mmHg: 0, mbar: 0, inHg: 1, cmH2O: 0, psi: 2, bar: 3 };

export const UNITS = Object.keys(PASCALS);

export function inUnit(kilopascals, unit) {
  return (kilopascals * 1000) / PASCALS[unit];
}

export function placesOf(unit) {
  return PLACES[unit];
}
