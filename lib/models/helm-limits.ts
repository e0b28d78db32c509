import type { Finding } from '../findings/finding.js';
import { bounds } from '../geometry/measure.js';
import { handleEdge, leastHandle } from '../parts/handle.js';
import { mirrorClosed, wedge } from '../parts/spoke.js';
import type { Stock } from '../stock/stock.js';
import type { Mm } from '../units/length.js';
import { coreSizes, LEAST_FLANK } from './helm-core.js';
import { seatsBearing } from './helm-hub.js';
import { lapWidth } from './helm-rim.js';
import type { HelmSizes } from './helm-sizes.js';
import { handleOptions, spokePins } from './helm-spokes.js';
import { plugDepth, UNDER_PLUG } from './helm-trim.js';

/** Stops without which a wheel has no shape at all: nothing can be built or drawn until they are mended. */

const stop = (rule: string, where: string, value: Mm, limit: Mm, what: string): Finding => ({
  level: 'stop',
  rule,
  where,
  message: `${where} is ${round(value)} mm; ${what}`,
  value,
  limit,
});

const round = (mm: Mm): number => Math.round(mm * 1000) / 1000;

/** A wall of wood between two laps at the rim's inner edge, where they are closest. */
const LAP_WALL: Mm = 3;
/** Wood left behind a bearing's seat. */
const SHOULDER: Mm = 3;
/** Shallowest counterbore that holds a plug. */
const LEAST_PLUG: Mm = 1;

function crowding(s: HelmSizes): Finding[] {
  const asin = (x: number): number => Math.asin(Math.min(1, x));
  const wall = s.inner * 2 * (Math.PI / s.spokes - asin(lapWidth(s) / 2 / s.inner));
  if (wall >= LAP_WALL) return [];
  const most = 2 * s.inner * Math.sin(Math.max(0, Math.PI / s.spokes - LAP_WALL / 2 / s.inner)) - s.fit.lap;
  return [
    stop(
      'spoke-crowding',
      'spokes.width',
      s.width,
      most,
      `${s.spokes} spokes collide or leave under ${LAP_WALL} mm between their laps at the rim's inner edge; allowed: at most ${round(most)} mm, or fewer spokes`,
    ),
  ];
}

function wedgeReach(s: HelmSizes): Finding[] {
  const { corner } = wedge({ count: s.spokes, width: s.width, clearance: s.fit.wedge });
  const inner = Math.sqrt(Math.max(0, s.inner * s.inner - (s.width * s.width) / 4)) - Math.max(0, s.fit.lap);
  if (inner - corner > 1) return [];
  return [
    stop(
      'wedge-reach',
      'spokes.width',
      s.width,
      s.width / 2,
      `the spokes' wedges reach the rim (${round(corner)} mm from the centre); allowed: narrower or fewer spokes`,
    ),
  ];
}

function wedgeFlank(s: HelmSizes): Finding[] {
  const { corner } = wedge({ count: s.spokes, width: s.width, clearance: s.fit.wedge });
  const { flat, shaft } = coreSizes(s);
  if (corner - flat >= LEAST_FLANK - 1e-9) return [];
  const where = shaft > 0 ? 'hub.bore' : 'spokes.width';
  const value = shaft > 0 ? 2 * shaft : s.width;
  return [
    stop(
      'wedge-flank',
      where,
      value,
      corner - LEAST_FLANK,
      `the spokes' wedges are cut back to ${round(flat)} mm from the centre and would keep no flank; the cut must stay within ${round(corner - LEAST_FLANK)} mm: a thinner shaft, wider spokes or more of them`,
    ),
  ];
}

function underSpokes(s: HelmSizes): Finding[] {
  if (s.seam.at !== 'under-spokes' || s.spokes % s.felloes === 0) return [];
  const allowed = Array.from({ length: 22 }, (_, i) => i + 3).filter(f => s.spokes % f === 0);
  return [
    {
      level: 'stop',
      rule: 'seam-place',
      where: 'rim.felloes',
      message: `rim.felloes is ${s.felloes}: seams under-spokes need a number that divides the ${s.spokes} spokes; allowed: ${allowed.join(', ') || 'none'}, or seams between-spokes`,
      value: s.felloes,
      limit: allowed.join(', '),
    },
  ];
}

const whole = (n: number): boolean => Math.abs(n - Math.round(n)) < 1e-6;

function layersOf(field: string, thickness: Mm, layers: number, stock: Stock): Finding[] {
  if (whole(layers) && layers > 1.5) return [];
  const low = Math.max(2, Math.floor(layers + 1e-6));
  const right = [low, low + 1].map(n => `${round(n * stock.thickness)} mm`).join(' or ');
  return [
    stop(
      'laser-layers',
      field,
      thickness,
      low * stock.thickness,
      `a laser builds it up from whole layers of ${stock.name} (${round(stock.thickness)} mm), two or more; allowed: ${right}`,
    ),
  ];
}

function laserLayers(s: HelmSizes): Finding[] {
  if (s.method !== 'laser') return [];
  const own = [
    ...layersOf('rim.thickness', s.rim.thickness, s.rim.layers, s.rim.stock),
    ...layersOf('spokes.thickness', s.spoke.thickness, s.spoke.layers, s.spoke.stock),
  ];
  if (own.length > 0) return own;
  if (Math.abs(s.spoke.thickness - s.rim.thickness) > 1e-6 || Math.round(s.spoke.layers) !== Math.round(s.rim.layers))
    return [
      stop(
        'laser-layers',
        'spokes.thickness',
        s.spoke.thickness,
        s.rim.thickness,
        `cut by laser, spokes and rim cross layer by layer and share thickness and sheet; allowed: ${round(s.rim.thickness)} mm from ${round(s.rim.stock.thickness)} mm sheet`,
      ),
    ];
  return [];
}

function stockThickness(s: HelmSizes): Finding[] {
  const rim = s.method === 'laser' ? [] : ([['rim.thickness', s.rim.thickness, s.rim.stock, s.rim.layers]] as const);
  const spoke = s.method === 'laser' ? [] : ([['spokes.thickness', s.spoke.thickness, s.spoke.stock, 1]] as const);
  const discs = s.discs.map(d => ['hub.thickness', d.thickness, d.stock, 1] as const);
  const trim = s.trim ? ([['trim.thickness', s.trim.thickness, s.trim.stock, 1]] as const) : [];
  return [...rim, ...spoke, ...discs, ...trim].flatMap(([where, value, stock, layers]) => {
    const from = stock.thickness * layers;
    const planed = stock.kind === 'board' && layers === 1 && value <= from + 1e-6;
    if (planed || Math.abs(value - from) < 1e-6) return [];
    const allowed = stock.kind === 'board' && layers === 1 ? `up to ${round(from)} mm` : `${round(from)} mm`;
    return [
      stop(
        'stock-thickness',
        where,
        value,
        from,
        `stock ${stock.name} is ${round(stock.thickness)} mm thick${layers > 1 ? ` and there are ${layers} layers` : ''}; allowed: ${allowed}`,
      ),
    ];
  });
}

function bearingSeat(s: HelmSizes): Finding[] {
  return s.discs.flatMap(d => {
    const { axis } = d;
    if (axis.kind !== 'bearing' || axis.seat !== 'shoulder' || !seatsBearing(s, d)) return [];
    const least = axis.bearing.width + SHOULDER;
    if (d.thickness >= least) return [];
    return [
      stop(
        'bearing-seat',
        'hub.thickness',
        d.thickness,
        least,
        `a shoulder seat for bearing ${axis.bearing.name} (${axis.bearing.width} mm wide) needs a ${d.face} disc of at least ${round(least)} mm; allowed: thicker stock, or seat: through`,
      ),
    ];
  });
}

function hubBore(s: HelmSizes): Finding[] {
  return s.discs.flatMap(d => {
    const wide =
      d.axis.kind === 'bearing' ? d.axis.bearing.outside / 2 : d.axis.kind === 'axle' ? d.axis.diameter / 2 : 0;
    if (d.radius - wide >= 6) return [];
    return [
      stop(
        'hub-bore',
        'hub.diameter',
        2 * d.radius,
        2 * (wide + 6),
        `the ${d.face} disc keeps under 6 mm round its bore; allowed: at least ${round(2 * (wide + 6))} mm`,
      ),
    ];
  });
}

function handleLength(s: HelmSizes): Finding[] {
  const { length, collar = 0, profile, shape = 'plain' } = handleOptions(s);
  const least = collar + (profile ? 0.1 : leastHandle(shape, s.width / 2));
  if (length >= least) return [];
  const where = 'spokes.overall';
  return [
    stop(
      'handle-length',
      where,
      2 * s.tip,
      2 * (s.outer + least),
      `a ${profile ? 'profiled' : shape} handle on a spoke ${round(s.width)} mm wide needs ${round(least)} mm past the rim; allowed: at least ${round(2 * (s.outer + least))} mm`,
    ),
  ];
}

/** Widest a handle may swell: the spoke's width, or what the trued stock gives where that is more. */
function handleWidth(s: HelmSizes): Finding[] {
  const edge = handleEdge(handleOptions(s));
  const half = bounds(mirrorClosed(edge)).maxY;
  const { stock } = s.spoke;
  const most = Math.max(s.width, stock.width - 2 * stock.true) / 2;
  if (half <= most + 1e-6) return [];
  return [
    stop(
      'handle-width',
      'spokes.handle.profile',
      half,
      most,
      `that is the handle's largest half width; stock ${stock.name} gives at most ${round(most)} mm`,
    ),
  ];
}

function trimFits(s: HelmSizes): Finding[] {
  const { trim } = s;
  if (!trim) return [];
  const band = trim.outer - trim.inner;
  const wide =
    band > s.outer - s.inner + 1e-9
      ? [
          stop(
            'trim-band',
            'trim.band',
            band,
            s.outer - s.inner,
            `wider than the rim's band; allowed: at most ${round(s.outer - s.inner)} mm`,
          ),
        ]
      : [];
  const shallow =
    trim.plugs && plugDepth(trim) < LEAST_PLUG
      ? [
          stop(
            'plug-depth',
            'trim.thickness',
            trim.thickness,
            UNDER_PLUG + LEAST_PLUG,
            `a counterbore leaves ${UNDER_PLUG} mm of wood under it and needs ${LEAST_PLUG} mm itself; allowed: at least ${UNDER_PLUG + LEAST_PLUG} mm, or no plugs`,
          ),
        ]
      : [];
  return [...wide, ...shallow];
}

function loosePins(s: HelmSizes): Finding[] {
  const { inner, handle } = spokePins(s);
  if (s.spoke.layers === 1 || (inner.length === 2 && handle.length === 2)) return [];
  const [where, value] =
    inner.length < 2 ? (['rim.outside', 2 * s.outer] as const) : (['spokes.overall', 2 * s.tip] as const);
  return [
    stop(
      'registration',
      where,
      value,
      value,
      `the spokes' ${inner.length < 2 ? 'inner' : 'handle'} pieces have no room for two registration pins; allowed: longer ones, or wider spokes`,
    ),
  ];
}

type Rule = (s: HelmSizes) => Finding[];

/** Independent limits first; those that need a buildable wheel only where the first hold. */
export function helmLimits(s: HelmSizes): Finding[] {
  const run = (rules: readonly Rule[]): Finding[] => rules.flatMap(rule => rule(s));
  const first = run([
    underSpokes,
    crowding,
    wedgeReach,
    wedgeFlank,
    laserLayers,
    stockThickness,
    bearingSeat,
    hubBore,
    handleLength,
    trimFits,
  ]);
  return first.length > 0 ? first : run([handleWidth, loosePins]);
}
