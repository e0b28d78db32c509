const STARTER = `# A plan for Rimwright: a helm wheel for Lantern Cove youth theatre's ferry play.
# Change the numbers, then run: rimwright make helm.yaml --out out
# A bare number is in the plan's units. Other forms: 4-1/4, 4 1/4", 762mm, 76.2cm, 2ft 6in. What follows a # is a remark.
rimwright: 1                 # version of the plan format
title: Lantern Cove ferry helm
units: in                    # mm or in
model: helm-wheel

rim:
  outside: 30                # diameter
  band: 4-1/4                # radial width
  felloes: 5                 # segments of the ring, 3 to 24
  seam: { joint: biscuit, size: "20", at: between-spokes }   # or butt, dowel, finger, key, scarf; or at: under-spokes
  stock: plank               # a name under stock, below

spokes:
  count: 10                  # 3 to 36
  width: 1-1/4
  overall: 41                # diameter over the tips of the handles
  handle: { shape: turned }  # plain, tapered or turned; add faces: 2 to shape the second side too
  stock: batten

hub:
  diameter: 8
  faces: both                # front, back or both
  bore: { axle: 1/2 }        # or none, or { bearing: "6202", seat: shoulder }
  stock: ply

# A thin ring on the rim that hides its seams. Leave it out, or take the # away:
# trim: { faces: front, band: 2, segments: 5, plugs: { diameter: 3/8, each: 4 }, stock: thin }

edges:
  rim: { shape: round, radius: 1/4, faces: both }   # routed edges; also for trim and hub

turns: shaft                 # shaft (fixed to a shaft that turns), bearing (turns on its own) or fixed (hangs flat)
method: router               # hand, router or laser
cutter: { kind: router, diameter: 1/4, reach: 1, pass: 1/4 }
bed: { width: 48, length: 96 }

# Clearance across each joint; a negative one presses.
fit: { lap: 0.15mm, wedge: 0mm, bore: 0.05mm }

# What there is to cut from. Without count there is as much as is needed; true is taken off each long edge of a board.
stock:
  plank:  { kind: board, width: 7-1/4, thickness: 3/4, length: 96, count: 2, species: ponderosa pine, true: 1/8 }
  batten: { kind: board, width: 3-1/2, thickness: 3/4, length: 96, count: 2, species: ponderosa pine, true: 1/8 }
  ply:    { kind: sheet, width: 48, length: 48, thickness: 3/4, count: 1, species: softwood plywood }
  thin:   { kind: sheet, width: 48, length: 48, thickness: 12mm, count: 1, species: birch plywood }

copies: 1
paper: [letter, a4]          # for the printed templates
`;

/** A commented plan to start from; `readPlan` takes it as it is. */
export const starterPlan = (): string => STARTER;
