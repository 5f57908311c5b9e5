// A whole unit file for tests: invented, after the tail box of docs/reference/unit-file.md. Text, so that no formatter touches its spacing.
export const tailBox = `# The tail box as it was written down at the bench.
matchmark: unit/1
unit: tail box of the slate mill
invented: true                                # demo data says so
revision: 1.10
sizes: {in: mm, standing: seen, source: calipers}
housing: box
lines:
  1: {at: [0, 0], ends: [coupling end, wall B end], datum: outside face of wall A}
  2: {at: [94, 0]}
openings:                                     # what closes them says so itself
  top:    {size: 112 × 150}
  bore A: {line: 1, end: coupling end}
  bore B: {line: 1, end: wall B end}
  bore C: {line: 2, end: '-'}
  drain:
  hole A: {in: cover A}                       # a hole in a part that closes another opening
  filler: {in: lid}
parts:
  box:
    look: casting
    mass: ≈ 41
    wall on 1:   "0..23: 80.010, 23..25.65: 83.5, 25.65..28: 80.010, 148..176: 72.015"
    wall on 2:   "0..28: 90.02, 148..176: closed"
  shaft:
    mass: 2.4
    number: 0042
    line 1:      "-74..-16: 30, -16..4: 38, 4..23: 40.012, 23..36: 54, 36..82: 45.99, 82..83.85: 43.5,
                  83.85..88: 46, 88..153: 42, 153..170: 35.010, 170..171.6: 33, 171.6..175: 35.010"
    features:
      seat A: {size: 40.012, new: 40.002..40.018, worn: 39.99.., source: shop drawing 12, what: bearing seat}
      seat B: 35.010
  wheel key:     {onto: shaft, kind: key, line 1: "38..78: 53/46", keys: wheel}
  wheel:
    look:        gear
    mass: 3.6
    slides on:   shaft
    line 1:      "36..82: 72/46, 38..74: 136/46 teeth"
    way:         {park through: top, held by: strap, home with: shaft, why: the shaft passes through it}
  wheel ring:
    onto:        shaft
    kind:        snap ring
    line 1:      "82..83.75: 62/43.5"
    passing:     "82..83.75: 66/46"           # its shape while it is sprung
    reach:       top
  wall ring:     {onto: box, kind: snap ring, line 1: "23..25.5: 83.5/62", passing: "23..25.5: 80.01/58", comes from: coupling end}
  bearing A:
    onto: shaft
    kind: press fit
    line 1: "5..23: 80/40"
    joined: in the housing
    takes: 10..15 min
    tools: [tube on the inner ring, bar]
    cautions: Prop the shaft against its collar.
  bearing B:     {onto: shaft, kind: press fit, line 1: "153..170: 72/35", joined: in the housing, seats against: shaft}
  end ring:      {onto: shaft, kind: snap ring, line 1: "170..171.5: 50/33", passing on 1: "170..171.5: 50/35.01"}
  cover A:
    onto:        box
    closes:      bore A
    line 1:      "-22..-8: 120/55, -8..-0.4: 120/46, -0.4..4.9: 80/46"
    flat:        {towards line: 2, at: 46}
    then:        {feel for the seat: {takes: 2 min, tools: feeler}}
  seal:
    onto:        cover A
    kind:        lip seal
    life:        renew
    closes:      hole A
    runs on:     shaft
    line 1:      "-16..-8: 55/38"
    tool:        {sleeve: "-16..-8: 31/30.2"}
  coupling key:  {onto: shaft, kind: key, line 1: "-70..-25: 36/30"}
  cap B:
    onto: box
    closes: bore B
    line 1: "172.4..176.4: ≈ 72/50, 176.4..190: 110/?"
    columns: {circle: 90, angles: [0, 90], diameter: 14, x: 190, from: wall B end, for: screw head}
    loose until: tighten cap B
  cartridge:     {onto: box, closes: bore C, meshes: wheel, line 2: "-10..0: 130, 0..26: 90, 26..40: 40, 40..76: 68", flat: {towards line: 1, at: 46}, does not pass: wheel}
  lid:           {closes: top, pieces: 1, supply: {from: own shop, lead: 2 weeks}}
  drain plug:    {closes: drain}
  filler plug:   {closes: filler, variants: late}
connections:
  seat of bearing A: {kind: press fit, parts: [shaft, bearing A], inner: shaft.seat A}
  cap screws:
    kind: fasteners
    of: cap B
    places: {circle: 90, count: 6}
    own step: true
checks:
  wheel ring turns: {wants: wheel ring, reach: top}
  float:            {does: Read the float at the stub, wants: [bearing A, bearing B, cover A], without: seal, limit: 0.05..0.15 mm, source: works sheet, takes: 6 min}
  backlash:         {wants: [shaft, bearing A, bearing B, cartridge], reach: top, limit: 0.12..0.20}
  dry gap:          {trial: cover A, wants: bearing A, without: seal, on bench: shaft, limit: turns freely}
fills:
  oil:              {litres: 1.6, through: filler, stands above: [bore A, bore B, bore C, drain], after: float, takes: 10 min}
lies:               # how the housing must lie; what is not named does not care
  upright:          [wheel, shaft, wheel ring, wheel ring turns, cartridge, backlash, lid, oil, filler plug]
  wall A up:        [bearing A, cover A, float, seal]
  wall B up:        [bearing B, end ring, cap B]
turning: {takes: 4 min, hazard: 1}
steps:
  wash out: {does: Wash the box out, before: shaft, why: chips from the tapping, takes: 10 min}
orders:
  - {first: drain plug, then: lid, why: looked at from above, standing: usual}
drop: {feel for the seat: seen through the bore}
clocks:
  grip: {from: end of warm bearing A, to: start of bearing A, most: 2 min, why: it grips when cold, standing: usual}
sets: {shaft and wheel: {parts: [shaft, wheel], why: run together}}
variants:
  early: {serials: ..1204}
  late:  {serials: 1205.., marks: cast mark R2}
`
