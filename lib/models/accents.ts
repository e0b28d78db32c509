import type { Finding, Outcome } from '../findings/finding.js';
import { polar } from '../geometry/point.js';
import { accentRing } from '../parts/accent-ring.js';
import { cap } from '../parts/cap.js';
import { letteringSweep, nameBand, withText } from '../parts/name-band.js';
import type { Stock } from '../stock/stock.js';
import type { Mm, Radians } from '../units/length.js';
import type { AccentOptions } from './accents-options.js';
import { type Bound, size } from './bounds.js';
import type { Draft } from './drafts.js';
import { stockNamed } from './named-stock.js';
import { relative } from './seams.js';

/** Where a wheel takes accents; lengths mm, angles from +y. */
export interface AccentPlaces {
  /** the flat of the rim's front, or of what lies on it */
  readonly inner: Mm;
  readonly outer: Mm;
  /** its height */
  readonly front: Mm;
  /** of the spokes' crossings */
  readonly crossings: readonly Radians[];
  /** the front hub disc: its flat, its hole, its height; absent where there is none */
  readonly hub?: { readonly radius: Mm; readonly hole: Mm; readonly front: Mm };
}

/** Numbers of accents and their documented ranges. */
export const accentBounds = ({ caps, ring, name }: AccentOptions = {}): Bound[] => [
  size('accents.caps.diameter', caps?.diameter, 1, 2000),
  size('accents.caps.thickness', caps?.thickness),
  size('accents.ring.outside', ring?.outside, 1),
  size('accents.ring.inside', ring?.inside, 0.5, ring ? ring.outside - 0.5 : undefined),
  size('accents.ring.thickness', ring?.thickness),
  size('accents.name.height', name?.height, 2, 500),
  size('accents.name.band', name?.band, 3),
  size('accents.name.thickness', name?.thickness),
];

const rounded = (mm: Mm): number => Math.round(mm * 100) / 100;

const stop = (rule: string, where: string, value: Mm, limit: Mm, what: string): Finding => ({
  level: 'stop',
  rule,
  where: `accents.${where}`,
  message: `accents.${where} is ${rounded(value)} mm; ${what}`,
  value,
  limit,
});

const cutFrom = (stock: readonly Stock[], field: string, own: { readonly stock: string; readonly thickness?: Mm }) => {
  const from = stockNamed(stock, `accents.${field}.stock`, own.stock);
  return { stock: from.name, thickness: own.thickness ?? from.thickness, grained: from.kind === 'board' };
};

/** A name band's sizes. */
interface NameSizes {
  readonly inner: Mm;
  readonly outer: Mm;
  readonly height: Mm;
  readonly sweep: Radians;
  readonly middle: Radians;
}

/** A band's radial width and a capital's height, as shares of what they lie on; common practice, no source. */
const BAND_SHARE = 0.8;
const LETTER_SHARE = 0.5;

function nameSizes(p: AccentPlaces, name: NonNullable<AccentOptions['name']>): NameSizes {
  const radius = (p.inner + p.outer) / 2;
  const band = name.band ?? BAND_SHARE * (p.outer - p.inner);
  const height = name.height ?? LETTER_SHARE * band;
  return {
    inner: radius - band / 2,
    outer: radius + band / 2,
    height,
    sweep: letteringSweep([...name.text].length, height, radius),
    middle: name.at === 'bottom' ? Math.PI : 0,
  };
}

function nameLimits(p: AccentPlaces, name: NonNullable<AccentOptions['name']>): Finding[] {
  const s = nameSizes(p, name);
  const most = p.outer - p.inner;
  const band = s.outer - s.inner;
  if (band > most + 1e-9)
    return [
      stop(
        'name-band',
        'name.band',
        band,
        most,
        `the flat it lies on is ${rounded(most)} mm wide; allowed: at most that`,
      ),
    ];
  if (s.height > 0.9 * band)
    return [
      stop(
        'name-height',
        'name.height',
        s.height,
        0.9 * band,
        `allowed: at most ${rounded(0.9 * band)} mm, nine tenths of the band`,
      ),
    ];
  const longest = (s.height * Math.PI) / s.sweep;
  if (s.sweep > Math.PI)
    return [
      stop(
        'name-length',
        'name.height',
        s.height,
        longest,
        `the text is longer than half the rim; allowed: at most ${rounded(longest)} mm, or fewer letters`,
      ),
    ];
  return [];
}

function nameDraft(p: AccentPlaces, name: NonNullable<AccentOptions['name']>, stock: readonly Stock[]): Draft {
  const { inner, outer, height, sweep, middle } = nameSizes(p, name);
  const band = nameBand({ inner, outer, sweep, ...cutFrom(stock, 'name', name) });
  const part = withText(band, name.text, { height, place: name.at ?? 'top' });
  return { part, turn: middle, z: p.front };
}

/** Crossings whose cap would lie under the name band. */
function hidden(p: AccentPlaces, o: AccentOptions): (angle: Radians) => boolean {
  if (!o.name || !o.caps) return () => false;
  const { sweep, middle } = nameSizes(p, o.name);
  const radius = (p.inner + p.outer) / 2;
  const half = sweep / 2 + Math.asin(Math.min(1, o.caps.diameter / 2 / radius));
  return angle => Math.abs(relative(angle, middle)) < half + 1e-9;
}

/** Neighbouring caps keep apart by their chord: 2 r sin(angle / 2). */
function capLimits(p: AccentPlaces, { diameter }: NonNullable<AccentOptions['caps']>): Finding[] {
  const flat = p.outer - p.inner;
  const apart = p.crossings.length > 1 ? (p.inner + p.outer) * Math.sin(Math.PI / p.crossings.length) : Infinity;
  const most = Math.min(flat, apart);
  return diameter > most + 1e-9
    ? [
        stop(
          'accent-cap',
          'caps.diameter',
          diameter,
          most,
          `allowed: at most ${rounded(most)} mm, so that caps lie on the rim and clear of each other`,
        ),
      ]
    : [];
}

function capDrafts(p: AccentPlaces, o: AccentOptions, stock: readonly Stock[]): Outcome<Draft[]> {
  const { caps } = o;
  if (!caps) return { value: [], findings: [] };
  const part = cap({ diameter: caps.diameter, ...cutFrom(stock, 'caps', caps) });
  const under = hidden(p, o);
  const shown = p.crossings.filter(a => !under(a));
  const value = shown.map(
    (angle): Draft => ({ part, turn: angle, ...polar((p.inner + p.outer) / 2, Math.PI / 2 + angle), z: p.front }),
  );
  const left = p.crossings.length - shown.length;
  const message = `accents.caps: ${left} of ${p.crossings.length} crossings lie under the name band and get no cap`;
  return { value, findings: left > 0 ? [{ level: 'note', rule: 'accent-cap', where: 'accents.caps', message }] : [] };
}

function ringLimits({ hub }: AccentPlaces, ring: NonNullable<AccentOptions['ring']>): Finding[] {
  if (!hub)
    return [
      {
        level: 'stop',
        rule: 'accent-ring',
        where: 'accents.ring',
        message:
          'accents.ring is given, but there is no front hub disc for it to lie on; allowed: left out, or a hub with a front face',
      },
    ];
  const [least, most] = [2 * hub.hole, 2 * hub.radius];
  if (ring.outside > most + 1e-9)
    return [
      stop(
        'accent-ring',
        'ring.outside',
        ring.outside,
        most,
        `allowed: at most ${rounded(most)} mm, the flat of the front hub disc`,
      ),
    ];
  if (ring.inside < least - 1e-9)
    return [
      stop(
        'accent-ring',
        'ring.inside',
        ring.inside,
        least,
        `allowed: at least ${rounded(least)} mm, clear of what turns in the hub`,
      ),
    ];
  return [];
}

/** Caps, hub ring and name band of a wheel; nothing with a stop where one does not fit its place.
 * @throws Unusable naming a stock that is not known */
export function accentDrafts(
  p: AccentPlaces,
  o: AccentOptions | undefined,
  stock: readonly Stock[],
): Outcome<readonly Draft[]> {
  if (!o) return { value: [], findings: [] };
  const stops = [
    ...(o.caps ? capLimits(p, o.caps) : []),
    ...(o.ring ? ringLimits(p, o.ring) : []),
    ...(o.name ? nameLimits(p, o.name) : []),
  ];
  if (stops.length > 0) return { value: [], findings: stops };
  const caps = capDrafts(p, o, stock);
  const ring =
    o.ring && p.hub
      ? [{ part: accentRing({ ...o.ring, ...cutFrom(stock, 'ring', o.ring) }), turn: 0, z: p.hub.front }]
      : [];
  const name = o.name ? [nameDraft(p, o.name, stock)] : [];
  return { value: [...caps.value, ...ring, ...name], findings: caps.findings };
}

/** How the accents go on. */
export const accentSteps = (o: AccentOptions | undefined): string[] =>
  o
    ? [
        'Glue the accents on last, once everything under them is finished: caps over the crossings, ring and name band centred by eye against the spokes.',
      ]
    : [];
