// Where a value stands on its slider, and which values a slider takes.
const clamp = (x, low, high) => Math.min(high, Math.max(low, x));

// The step of a slider: 1, 2 or 5 times a power of ten, at least 200 steps over the range.
const niceStep = raw => {
  const power = 10 ** Math.floor(Math.log10(raw));
  return [5, 2, 1].map(m => m * power).find(s => s <= raw * 1.0000001) || power;
};

const hasSlider = row => row.value !== null && row.value !== undefined && Number.isFinite(row.low) && Number.isFinite(row.high) && row.high > row.low;

// Places of the slider [1].
const places = row => (row.whole ? Math.round(row.high - row.low) : 200);

// Share of the track, 0 at its left end and 1 at its right.
const share = (row, value) => {
  if (!Number.isFinite(value)) return 0;
  if (row.logarithmic && row.low > 0) return value <= 0 ? 0 : clamp(Math.log(value / row.low) / Math.log(row.high / row.low), 0, 1);
  return clamp((value - row.low) / (row.high - row.low), 0, 1);
};

// The value as text at a share of the track: rounded as a hand would write it.
const numberAt = (row, s) => {
  const at = clamp(s, 0, 1);
  if (row.whole) return String(Math.round(row.low + at * (row.high - row.low)));
  if (row.logarithmic && row.low > 0) return plain(row.low * (row.high / row.low) ** at);
  const step = niceStep((row.high - row.low) / 200);
  const value = clamp(Math.round((row.low + at * (row.high - row.low)) / step) * step, row.low, row.high);
  return String(Number(value.toFixed(Math.max(0, -Math.floor(Math.log10(step))))));
};

// Three figures, no exponent for the sizes that builders meet.
const plain = value => {
  if (!Number.isFinite(value)) return "";
  const text = Number(value.toPrecision(3));
  return String(text);
};

const withUnit = (row, number) => (row.unit ? `${number} ${row.unit}` : number);

export { clamp, hasSlider, places, share, numberAt, plain, withUnit };
