// Where a value stands on its slider, and which values a slider takes.
const clamp = (x, low, high) => Math.min(high, Math.max(low, x));

// The step of a slider: 1, 2 or 5 times a power of ten, at least 200 steps over the range.
const niceStep = raw => {
  const power = 10 ** Math.floor(Math.log10(raw));
  return [5, 2, 1].map(m => m * power).find(s => s <= raw * 1.0000001) || power;
};

const hasSlider = row => row.value !== null && row.value !== undefined && row.track.length > 0;

// Places of the slider [1]: 200 on the longest piece of its track.
const places = row => (row.whole ? Math.round(row.high - row.low) : Math.round(200 / Math.max(...row.track.map(p => p.to - p.from))));

// Share of the track, 0 at its left end and 1 at its right.
const share = (row, value) => {
  if (!Number.isFinite(value) || row.track.length === 0) return 0;
  const part = row.track.find(p => value <= p.high) || row.track[row.track.length - 1];
  const way = part.logarithmic ? (value <= 0 ? 0 : Math.log(value / part.low) / Math.log(part.high / part.low)) : (value - part.low) / (part.high - part.low);
  return part.from + clamp(way, 0, 1) * (part.to - part.from);
};

// The value as text at a share of the track: rounded as a hand would write it.
const numberAt = (row, s) => {
  const at = clamp(s, 0, 1), part = row.track.find(p => at <= p.to) || row.track[row.track.length - 1];
  const way = (at - part.from) / (part.to - part.from);
  if (row.whole) return String(Math.round(part.low + way * (part.high - part.low)));
  if (part.logarithmic) return plain(part.low * (part.high / part.low) ** way);
  const step = niceStep((part.high - part.low) / (places(row) * (part.to - part.from)));
  const value = clamp(Math.round((part.low + way * (part.high - part.low)) / step) * step, part.low, part.high);
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
