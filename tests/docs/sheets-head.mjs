/** What stands above the generated tables of docs/sheets.md, written by hand. */
export const HEAD = `
<!-- Written by npm run docs. Change tests/docs/sheets-head.mjs or the schemas in src, never this file. -->
# Sheets: the reference

A sheet is a text file that says how something is wired. Ringproof reads seven kinds of sheet. This page is enough
to write any of them. The rules come first, then a table of keys for each kind of sheet, each kind of part and each
move.

## Rules for all sheets

**File.** YAML 1.2, core schema, one document, UTF-8, at most 1 MiB, nested at most 32 levels deep. Comments begin with
\`#\`. Anchors, aliases and merge keys are refused. \`on\`, \`off\`, \`yes\` and \`no\` are plain words; where a key asks
for yes or no, \`yes\`, \`no\`, \`true\` and \`false\` are all accepted.

**Head.** Every sheet says \`ringproof: 1\` (the version of the format), \`sheet:\` (its kind) and \`name:\`. It may have
a \`title\` of one line and \`notes\`, a list of texts. A comment in the first line can name the JSON Schema, so that an
editor completes and checks while you write:

\`\`\`yaml
# yaml-language-server: $schema=../../docs/schemas/set.sheet.json
\`\`\`

**Keys** are lower-case words with single blanks. A key that is not in the tables below is refused.

**Names** begin with a lower-case letter and go on with lower-case letters, digits and hyphens: \`bell-resistor\`. A name
stands once in its map. In a set the names of contacts, parts, slots, cords and handset parts must differ from each
other too, since they become ids.

**Terminals** are the capitals of a strip and a number: \`B3\`. \`strips: {A: 6, B: 5}\` gives A1 to A6 and B1 to B5. A
meeting point of parts that has no screw is a **joint**: a name listed under \`joints\`. At least two ends must meet at a
joint.

**Ends.** A part lies between \`from\` and \`to\`. Current is positive from \`from\` to \`to\` through the part. In a set an
end is a terminal, a joint or \`earth\`. In the handset it is a core of the cord that ends in the handset. In a unit it
is a pin, a joint or \`earth\`. In a circuit it is any name; parts whose ends carry the same name meet; \`earth\` is the
reference.

**Windings.** The first-named end of a winding is its start. A coupling is positive between starts.

**Straps** are named by their two terminals: \`B2-B3\`. Either end may be named first, but a strap stands once.

**Contacts** say either \`closed when\` or \`open when\`, never both. The words: \`off-hook\` (handset lifted),
\`off-normal\` (dial turned), \`make\` (off-normal, pulse contact closed), \`break\` (off-normal, pulse contact open),
\`key\` (recall key pressed). \`order: first\` makes before the others and breaks after them.

**Cords and plug.** A core is known by its name; its colour is a label that may be wrong. A core \`lands\` on a terminal
or is \`parked\`: insulated, on nothing. In moves a core is written \`cord.core\`: \`handset.r2\`. The plug maps the
numbers of its contacts to cores. \`numbered by: wiring\` counts 2 b wire, 3 ringing lead, 4 earth, 5 a wire;
\`numbered by: contact\` is the mirror image, where k becomes 7 − k.

**Quantities** carry a unit: \`3.3 kΩ\`, \`1.8 µF\`, \`25 Hz\`, \`2 km\`, \`20 °C\`. The blank may be left out. \`ohm\`
may stand for Ω and \`u\` for µ. Resistances and capacitances may be written with the letter in place of the point:
\`3k3\`, \`4R7\`, \`4n7\`. The decimal sign is a point. A bare number is refused where a unit is due; only a ratio may be
bare or in per cent (\`0.05\`, \`5 %\`). Numbers that the tables call "without unit" stay bare.

- Tolerance: \`± 5 %\` behind the value (\`+-\` and \`+/-\` are read too): \`3.3 kΩ ± 5 %\`.
- A resistance may be written by its bands, the first one first: \`orange orange red gold\` is 3.3 kΩ ± 5 %; three bands
  mean ± 20 %. A sixth band, the drift with temperature, is read and not used.
- A value at a working point: \`150 Ω at 40 mA\`.
- An alternating source, rms, with its angle: \`1 V at 30°\`.
- A span: \`20 mA to 100 mA\`, both ends with their unit, the smaller first, no tolerance.
- Between the values of a list or map in one line a comma must stand, and a colon needs a blank behind it.

**Conditions** begin with \`on-hook\` or \`off-hook\`; the state of the dial (\`make\`, \`break\`), of the key (\`key\`) and
of the line (\`ringing\`, \`speech\`) follow behind strokes: \`off-hook/speech\`, \`off-hook/break\`, \`on-hook/ringing\`.
What is not said is at rest: dial at rest, key up, line idle.

**Days** are written \`2026-11-03\`.

**Other sheets** are called by the name in their head, not by their file. A file must end in \`.yaml\` to be found. The
nearest of a kind and name counts: in the folder of the sheet that asks, then in the folders beside it, then in the
folders given with \`--sheets\`, then among the sheets that come with the program.

## Variants: \`based on\` and \`without\`

A set that differs little from another says \`based on: other-set\` and then only what differs. First \`without\` takes
away what the base has, each by its dotted path: \`without: [straps.B2-B3, slots.regulator]\`. A path that the base does
not have is refused. Then the rest is laid on top: maps merge key by key, at every depth; lists and single values
replace. So \`cords: {handset: {cores: {r2: {lands: B2}}}}\` moves one core and leaves the others. A base may itself be
based on another set, but not in a circle.

## What the tables do not show

- An impedance is a list of elements in series. \`{beside: [620 Ω, 310 nF]}\` is an element whose members lie side by
  side: \`[370 Ω, {beside: [620 Ω, 310 nF]}]\`.
- Under \`sets\` of premises the name is the *place*, such as \`kitchen\`. It begins the ids of everything there.
- A ringing lead begins in a master socket, or in an adapter that has its own \`capacitance\` and \`resistance\` (both or
  neither). A pair (\`house-pair\`, \`twin\`) does not carry it on; \`ringing lead: no\` says so too.
- A \`converter\` passes ringing unless it says \`passes ringing: no\`; dial pulses end in it for everything behind it.
- The constants of a \`cable\` in a circuit are for a kilometre of the loop, both wires together. Its far ends need nodes of
  their own: with both b ends on \`earth\` the earth would carry the return.
- A move changes only what it names. A rewire starts from the set that it names.
- In the tables, \`<name>\` stands for any name, and \`[]\` for each entry of a list.
`
