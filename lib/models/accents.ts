import type { Finding, Outcome } from '../findings/finding.js';
import { polar } from '../geometry/point.js';
import { accentRing } from '../parts/accent-ring.js';
import { cap } from '../parts/cap.js';
import { letteringBox } from '../parts/lettering/lettering.js';
import { letteringSweep, nameBand, withText } from '../parts/name-band.js';
import type { Stock } from '../stock/stock.js';
import type { Mm, Radians } from '../units/length.js';
import type { AccentOptions } from './accents-options.js';
import { type Bound, requireBounds, size } from './bounds.js';
import type { Draft } from './drafts.js';
import { upTo } from './helm-wheel/limit.js';
import type { Lettering } from './lettering.js';
import { stockNamed } from './named-stock.js';
import { relative, wrap } from './seams.js';

/** Where a prop takes accents; lengths mm, angles from +y. What is absent it has no place for. */
export interface AccentPlaces {
  /** the flat a name band lies on: its radii and its height; over how much of a turn, symmetric about +y, where it is no full ring */
  readonly rim?: { readonly inner: Mm; readonly outer: Mm; readonly front: Mm; readonly sweep?: Radians };
  /** middles of what caps lie over: their angles, their distance from the centre, the caps' height, and the widest there is room for */
  readonly crossings?: {
    readonly at: readonly Radians[];
    readonly radius: Mm;
    readonly front: Mm;
    readonly room: Mm;
  };
  /** what a ring lies on: the radii of its flat and of its hole, and its height */
  readonly hub?: { readonly radius: Mm; readonly hole: Mm; readonly front: Mm };
}

/** A full rim with caps half way across it. */
export const onRim = (rim: NonNullable<AccentPlaces['rim']>, at: readonly Radians[]): AccentPlaces => ({
  rim,
  crossings: { at, radius: (rim.inner + rim.outer) / 2, front: rim.front, room: rim.outer - rim.inner },
});

/** Numbers of accents and their documented ranges. */
const accentBounds = ({ caps, ring, name }: AccentOptions = {}): Bound[] => [
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

type Rim = NonNullable<AccentPlaces['rim']>;
type Name = NonNullable<AccentOptions['name']>;

function nameSizes(p: Rim, name: Name): NameSizes {
  const radius = (p.inner + p.outer) / 2;
  const band = name.band ?? BAND_SHARE * (p.outer - p.inner);
  const height = name.height ?? LETTER_SHARE * band;
  return {
    inner: radius - band / 2,
    outer: radius + band / 2,
    height,
    sweep: letteringSweep(name.text, height, radius),
    middle: name.at === 'bottom' ? Math.PI : 0,
  };
}

/** The tallest capitals with which a text, set half way across a band, takes nine tenths of it. */
function tallestOn(band: Mm, text: string): Mm {
  const { minY, maxY } = letteringBox(text, 1);
  return (0.45 * band) / Math.max(0.5, maxY, -minY);
}

/** Longest name, as a share of the ring it lies on. */
const LONGEST: Radians = Math.PI;

function nameLimits(p: Rim, name: Name): Finding[] {
  const s = nameSizes(p, name);
  const most = p.outer - p.inner;
  const band = s.outer - s.inner;
  if (band > most + 1e-9) {
    const what = `the flat it lies on is ${rounded(Math.max(0, most))} mm wide; allowed: ${upTo(most, 'a wider one')}`;
    return [stop('name-band', 'name.band', band, most, what)];
  }
  const tallest = tallestOn(band, name.text);
  if (s.height > tallest + 1e-9) {
    const what = `allowed: at most ${rounded(tallest)} mm, so that capitals, accents and what hangs below the line take nine tenths of the band`;
    return [stop('name-height', 'name.height', s.height, tallest, what)];
  }
  if (p.sweep !== undefined && name.at === 'bottom') {
    const message = 'accents.name.at is bottom, where an arc is open; allowed: top';
    return [{ level: 'stop', rule: 'name-place', where: 'accents.name.at', message, value: 'bottom', limit: 'top' }];
  }
  const room = Math.min(LONGEST, p.sweep ?? LONGEST);
  if (s.sweep <= room) return [];
  const longest = (s.height * room) / s.sweep;
  const what = `the text is longer than ${p.sweep === undefined ? 'half the rim' : 'the arc'}; allowed: at most ${rounded(longest)} mm, or fewer letters`;
  return [stop('name-length', 'name.height', s.height, longest, what)];
}

function nameDraft(p: Rim, name: Name, stock: readonly Stock[]): Draft {
  const { inner, outer, height, sweep, middle } = nameSizes(p, name);
  const band = nameBand({ inner, outer, sweep, ...cutFrom(stock, 'name', name) });
  const part = withText(band, name.text, { height, place: name.at ?? 'top' });
  return { part, turn: middle, z: p.front };
}

/** Crossings whose cap would lie under the name band. */
function hidden({ rim, crossings }: AccentPlaces, o: AccentOptions): (angle: Radians) => boolean {
  if (!o.name || !o.caps || !rim || !crossings) return () => false;
  const { sweep, middle } = nameSizes(rim, o.name);
  const half = sweep / 2 + Math.asin(Math.min(1, o.caps.diameter / 2 / crossings.radius));
  return angle => Math.abs(relative(angle, middle)) < half + 1e-9;
}

type Crossings = NonNullable<AccentPlaces['crossings']>;
type Caps = NonNullable<AccentOptions['caps']>;

/** Neighbouring caps keep apart by their chord: 2 r sin(angle / 2). */
function capLimits({ at, radius, room }: Crossings, { diameter }: Caps): Finding[] {
  const sorted = [...at].map(wrap).sort((a, b) => a - b);
  const gaps = sorted.map((a, i) => (sorted[i + 1] ?? sorted[0]! + 2 * Math.PI) - a);
  const apart = at.length > 1 ? 2 * radius * Math.sin(Math.min(Math.PI, ...gaps) / 2) : Infinity;
  const most = Math.min(room, apart);
  if (diameter <= most + 1e-9) return [];
  const what = `allowed: ${upTo(most, 'no caps')}, so that caps lie on what is under them and clear of each other`;
  return [stop('accent-cap', 'caps.diameter', diameter, most, what)];
}

function capDrafts(p: AccentPlaces, o: AccentOptions, stock: readonly Stock[]): Outcome<Draft[]> {
  const { caps } = o;
  const { crossings } = p;
  if (!caps || !crossings) return { value: [], findings: [] };
  const part = cap({ diameter: caps.diameter, ...cutFrom(stock, 'caps', caps) });
  const under = hidden(p, o);
  const shown = crossings.at.filter(a => !under(a));
  const value = shown.map(
    (angle): Draft => ({
      part,
      turn: angle,
      ...polar(crossings.radius, Math.PI / 2 + angle),
      z: crossings.front,
      lettering: { at: { x: 0, y: 0 }, height: caps.diameter / 4, length: 0.8 * caps.diameter },
    }),
  );
  const left = crossings.at.length - shown.length;
  const message = `accents.caps: ${left} of ${crossings.at.length} crossings lie under the name band and get no cap`;
  return { value, findings: left > 0 ? [{ level: 'note', rule: 'accent-cap', where: 'accents.caps', message }] : [] };
}

function ringLimits(hub: NonNullable<AccentPlaces['hub']>, ring: NonNullable<AccentOptions['ring']>): Finding[] {
  const [least, most] = [2 * hub.hole, 2 * hub.radius];
  if (ring.outside > most + 1e-9) {
    const what = `allowed: ${upTo(most, 'no ring')}, the flat it lies on`;
    return [stop('accent-ring', 'ring.outside', ring.outside, most, what)];
  }
  if (ring.inside >= least - 1e-9) return [];
  const what = `allowed: at least ${rounded(least)} mm, clear of what goes through the middle`;
  return [stop('accent-ring', 'ring.inside', ring.inside, least, what)];
}

/** Models that have a place for an accent, and what it takes there. */
const TAKEN = {
  caps: [
    'over crossings of spokes or mullions and a rim',
    'helm-wheel, cart-wheel, water-wheel, and ring-frame with mullions',
  ],
  ring: [
    'round the middle of the front',
    'helm-wheel with a front hub disc, cart-wheel, water-wheel, prize-wheel, and cable-reel with room between bore and rods',
  ],
  name: ['on the flat of a rim', 'helm-wheel, cart-wheel, ring-frame, prize-wheel, and cable-reel of segments'],
} as const;

/** A stop for an accent the prop has no place for. */
function unplaced(p: AccentPlaces, o: AccentOptions): Finding[] {
  const placeOf = { caps: p.crossings, ring: p.hub, name: p.rim };
  return (['caps', 'ring', 'name'] as const).flatMap((accent): Finding[] => {
    if (!o[accent] || placeOf[accent]) return [];
    const [lies, models] = TAKEN[accent];
    const where = `accents.${accent}`;
    const message = `${where} is given: it lies ${lies}, and there is no such place here; allowed: left out, or one of ${models}`;
    return [{ level: 'stop', rule: 'accent-place', where, message, value: 'given', limit: 'left out' }];
  });
}

/** Half way across a ring, under its hole. */
const ringLettering = ({ outside, inside }: NonNullable<AccentOptions['ring']>): Lettering => ({
  at: { x: 0, y: -(outside + inside) / 4 },
  height: Math.min(8, (outside - inside) / 5),
  length: 0.6 * inside,
});

/** Caps, ring and name band of a prop; nothing with a stop where there is no place for one, or it does not fit there.
 * @throws Unusable naming a number out of its range, or a stock that is not known */
export function accentDrafts(
  p: AccentPlaces,
  o: AccentOptions | undefined,
  stock: readonly Stock[],
): Outcome<readonly Draft[]> {
  if (!o) return { value: [], findings: [] };
  requireBounds(accentBounds(o));
  const { crossings, hub, rim } = p;
  const stops = [
    ...unplaced(p, o),
    ...(o.caps && crossings ? capLimits(crossings, o.caps) : []),
    ...(o.ring && hub ? ringLimits(hub, o.ring) : []),
    ...(o.name && rim ? nameLimits(rim, o.name) : []),
  ];
  if (stops.length > 0) return { value: [], findings: stops };
  const caps = capDrafts(p, o, stock);
  const ring: Draft[] =
    o.ring && hub
      ? [
          {
            part: accentRing({ ...o.ring, ...cutFrom(stock, 'ring', o.ring) }),
            turn: 0,
            z: hub.front,
            lettering: ringLettering(o.ring),
          },
        ]
      : [];
  const name = o.name && rim ? [nameDraft(rim, o.name, stock)] : [];
  return { value: [...caps.value, ...ring, ...name], findings: caps.findings };
}

/** How the accents go on. */
export function accentSteps(o: AccentOptions | undefined): string[] {
  const words = [
    ...(o?.caps ? ['caps over the crossings'] : []),
    ...(o?.ring ? ['the ring round the middle'] : []),
    ...(o?.name ? [`the name band at the ${o.name.at ?? 'top'}`] : []),
  ];
  if (words.length === 0) return [];
  return [`Glue the accents on last, once everything under them is finished: ${words.join(', ')}, centred by eye.`];
}
