/** What the command line says about itself and about files that it cannot use. */
export const cli = {
  "cli.overview": `stillhot {version}: draw a small distribution system, open and close things, and find, phase by phase,
what could still be live at the work point.

  stillhot <command> FILE… [--json]

{commands}

stillhot <command> --help tells about one of them. A FILE of - is standard input. --language fr answers in French;
en, English, is what holds without it. --region us says it in the words of the United States: clearance, not permit.

Exit code  0  done, nothing wrong found
           1  done, with findings: a work point that is not grounded, or anything above a note
           2  a file could not be used, or the line could not be understood; the reason is on standard error

Try        stillhot check quarry-lane.stillhot.json
           stillhot draw quarry-lane.stillhot.json -o quarry-lane.svg
           stillhot check *.stillhot.json --json

{caution}
`,
  "cli.filesAndCodes": `A FILE of - is standard input. Of several files, one that cannot be used is reported on standard error and
the others are still answered. With --json each file gives one JSON object on a line of its own.
--language fr puts every sentence into French, --region us into the words of the United States; names of rules,
keys and codes stay as they are.

Exit code 0: done, nothing wrong found. 1: done, with findings. 2: a file could not be used, or the line could
not be understood.`,
  "cli.seeHelp": "See stillhot {command} --help",

  "cli.import.summary": "Make a drawing of a utility's model (CIM) or of a map (GeoJSON)",
  "cli.import.help": `
All files on the line are one model. Read are IEC 61970/61968 CIM in RDF/XML (full models, CIM15 or newer) and
GeoJSON in the convention of docs/import.md. Whatever was assumed, left out or drawn less exactly is named, counted
and told with its reason; ids and names are kept.

  --neutral WAY   what is drawn for a neutral that the model's impedances have folded in:
                    return  a conductor with next to no impedance, rods assumed (what holds without it)
                    earth   none, every neutral perfect earth: reproduces published volts and currents
                    wires   a wire of its own where the file has the wires, else as return
                    given   neutrals, grounds and meters that the file has and no others (what holds for a
                            model that stillhot export wrote)
  --hertz HERTZ   50 or 60, where the file does not say
  --units UNITS   plain (volts, watts) or kilo (kilovolts, megawatts), where the file does not say
  --places WAY    tidy (what holds without it): where symbols would lie over each other on the map, a one-line drawing
                    on the map's sides; map: the places of the file, in metres
  --since OLD     a drawing of an older file of the same model: what is new, gone and changed is told
  --around NAME   only the piece around a place, as stillhot cut does (with --openings N)

With --json: { file, ok, counts, assumed, leftOut, approximated, warnings, drawing }, each entry with what, count, why
and names. A file that cannot be read gives { file, ok, errors } on standard error and exit code 2.
`,
  "cli.import.oneMap": "a map is one file; expected no other beside it",
  "cli.import.noWay": "--neutral {way}: expected one of {known}",
  "cli.export.noForm": "--as {form}: expected one of {known}",
  "cli.import.noHertz": "--hertz {hertz}: expected 50 or 60",
  "cli.import.noUnits": "--units {units}: expected plain or kilo",
  "cli.import.noPlaces": "--places {way}: expected tidy or map",
  "cli.import.done": "{file}: {points} points, {elements} elements",
  "cli.import.since":
    "Otherwise than in {since}, ids as in the drawings, what was changed by hand among them:",
  "cli.import.sinceNothing": "Nothing is otherwise than in {since}.",
  "cli.import.since.added": "new, {count}: {ids}",
  "cli.import.since.gone": "gone, {count}: {ids}",
  "cli.import.since.changed": "changed, {count}: {ids}",
  "cli.import.assumed": "Assumed, since the file does not say:",
  "cli.import.leftOut": "Left out:",
  "cli.import.approximated": "Drawn less exactly:",
  "cli.import.warnings": "To know of:",
  "cli.import.entry": "{count} × {what}: {why}",
  "cli.import.entryOf": "{count} × {what}: {why} ({names})",

  "cli.generate.summary": "Print a drawing to practise on, made from a level and a seed",
  "cli.generate.help": `
The drawing is a small tap with its job, invented, that could stand on poles: a line with its devices,
transformers and customers, and from level to level more of what feeds back, ties, couples or holds a charge.
It has no positions: the program lays it out. The same level, seed and version give the same file for ever;
two seeds that follow one another differ in shape.

  --level 1…6   1 one transformer and its cutout · 2 a sideline with a customer's machine or a shared secondary ·
                3 three phases with a tie, a bank, a cable loop or a capacitor · 4 two of these · 5 three · 6 five
  --seed N      a whole number from 0 to 4294967295
  --version V   the way of drawing (1); the newest where it is left out
  -o OUT        write it to a file, or as tap-LEVEL-SEED.stillhot.json into a folder that exists

With --language fr the names are French; all else stays the same.
With --json: { level, seed, version, drawing }, or { level, seed, version, out } with -o.

  stillhot generate --level 3 --seed 7 | stillhot check -
`,
  "cli.variant.summary": "Make variants of a scenario by number or name, one for each of a class",
  "cli.variant.help": `
The same scenario with other names, numbers and phases, and addresses in another order, so that what is hidden
stands elsewhere; in some variants of some scenarios nothing is hidden. What is to be done, what counts and what
it counts for stay. The same file and number give the same bytes for ever.

  --number N    the first variant, 1 to 9999 (1)
  --count N     so many of them, from that number on (1); more than one needs a folder
  --name WHO    the variant of a name, in place of a number
  -o OUT        write it to a file, or as NAME-NUMBER.stillhot.json into a folder that exists

With --json, one line each: { number, title, scenario }, or { number, title, out } with -o.

  stillhot variant shared/scenarios/lindens.stillhot.json --count 12 -o class
`,
  "cli.variant.oneFile": "variant takes one FILE",
  "cli.variant.noScenario": "{file}: holds no scenario",
  "cli.variant.needsFolder": "more than one variant needs -o and a folder that exists",
  "cli.variant.either": "--name goes with neither --number nor --count",
  "cli.variant.noName": "--name {name}: expected a letter or a digit",
  "cli.variant.tooHigh": "the last number would be above {most}",
  "cli.package.summary": "Make a lesson package (SCORM) of a scenario for a learning system",
  "cli.package.help": `
A zip of static files that a learning system unpacks and shows in a frame: the app, the scenario, the manifest. It
speaks to the system's own interface in the frame around it, and asks nothing of any other place. The system is
told whether it was passed, points, time and objectives, and keeps what was done, so that it can be gone on with.

  --scorm V     the version of the standard, 1.2 or 2004 (2004)
  -o OUT        write it to a file, or as NAME.scorm-V.zip into a folder that exists

With --json: { file, scorm, out, bytes }.

  stillhot package shared/scenarios/first-cutout.stillhot.json --scorm 1.2 -o lesson.zip
`,
  "cli.package.oneFile": "package takes one FILE",
  "cli.package.needsOut": "package needs -o and a file or a folder",
  "cli.package.noVersion": "--scorm {version}: expected one of {known}",
  "cli.drill.summary": "Print a worksheet of questions, or its key, on made drawings or on your own",
  "cli.drill.help": `
Questions of two minutes each, with the engine's own answers: what is live as drawn, what could make it live with
one thing wrong, what the detector will show, whether a tool may open a thing, where the ground must stand, steps
to put in order, the mistake in an order, and what to look at first. Without a FILE the drawings are made, as
generate makes them; the same level, seed and count give the same sheet.

  --level 1…6   of the drawings that are made (needed without a FILE)
  --seed N      a whole number (1)
  --count N     how many questions, 1 to 100 (10)
  --key         the answers with their reasons, in place of the questions
  -o OUT        write it to a file, or as drill-LEVEL-SEED.html into a folder that exists

The page is HTML, black and white, to be printed; it needs nothing else.
With --json: { level, seed, count, questions }, each question with kind, text, options, answer, why and drawing.

  stillhot drill --level 2 --seed 7 --count 6 -o sheet.html
  stillhot drill --level 2 --seed 7 --count 6 --key -o key.html
`,
  "cli.drill.none":
    "These drawings give no question: a job with a work point that can be planned gives most.",
  "cli.drill.fewer": "The drawings gave {count} questions, not {asked}.",
  "cli.drill.made": "level {level}, seed {seed}",
  "cli.drill.madeOf": "{files}, seed {seed}",
  "cli.drill.wrote": "{count} questions: written to {out}",

  "cli.flagNeeded": "{flag} is needed: a whole number from {from} to {to}",
  "cli.noWholeNumber": "{flag} {found}: expected a whole number from {from} to {to}",

  "cli.progress": "{n} of {count}: {file}",
  "cli.progress.read": "{file}: {percent} % read",
  "cli.progress.make": "{file}: the drawing is being made",
  "cli.progress.cut": "{file}: the piece is being cut out",
  "cli.export.summary": "Write a drawing for other programs: a map (GeoJSON) or a utility's model (CIM)",
  "cli.export.help": `
A map is one FeatureCollection of RFC 7946 in the convention of docs/import.md, a model is RDF/XML of IEC 61970 and 61968.
stillhot import reads both: the same states and the same volts come back. What they do not carry, as the job, a scenario or
the names of structures, is told on standard error, counted, with its reason. A drawing knows no place on earth: places of a
map are metres about 0°, 0°, those of a model metres on a plane.

  --as FORM       map or cim; else by the ending of OUT (.xml: cim), else map
  -o OUT          write it to a file, or under the same name into a folder that exists; else to standard output

With --json: { file, ok, leftOut, approximated, map } (or cim, a text), or out in place of it.
`,
  "cli.cut.summary": "Cut out what a job needs of a large drawing",
  "cli.cut.help": `
Everything within some openings of the place, and all that could feed it by up to three things going wrong: ties,
machines, customers, whatever is dead as drawn. What lies beyond, is fed and hangs on one point is replaced by an equal
source: the volts and impedances of all conductors as they are seen from there, loads as drawn and off. The piece is held
against the whole: verdict, margin, threats, volts and exposure of the place are the same within 0.1 %, or more is kept.

  --around NAME   the place: a name as a person says it, or the id of a structure, a point or a device
  --openings N    keep all within so many devices that can be opened (2)
  -o OUT          write it to a file, or under the same name into a folder that exists; else to standard output

What was cut, why it cannot matter and when it can is told on standard error. With --json: { file, ok, openings, parts,
compared, workPointsLeft, stepsLeft, scenarioLeft, drawing }, or out in place of drawing.
`,
  "cli.cut.needsAround": "no place was given: --around NAME",
  "cli.cut.noOpenings": "--openings {openings}: expected a whole number from 0 to 999",
  "cli.around.none":
    "nothing here is called {name}: expected the name or id of a structure, a point or a device",
  "cli.around.many": "{count} things are called {name}: {names}. Say which by more of its name, or by its id",
  "cli.around.manyMore":
    "{count} things are called {name}: {names}; and {more} more. Say which by more of its name, or by its id",

  "cli.validate.summary": "Read a file strictly and say what is wrong with it",
  "cli.validate.help": `
Every mistake is named by its path in the file, with what was found there and what was expected:

  tap.stillhot.json: 2 problems
    system.elements.c1.from: found "p9", expected the id of a point of this file
    system.elements.ld1.kw: found "9", expected a number of kW from -1000000 to 1000000

Keys that this program does not know are kept, named once, and give exit code 1.

With --json: { file, ok, findings, errors }. A file that cannot be read gives the same object on standard
error, with each of its errors as { path, message }; nothing of it goes to standard output.
`,
  "cli.validate.read": "read, {points} points and {elements} elements",

  "cli.check.summary": "Find what is live as drawn and what could become live",
  "cli.check.help": `
For each work point of the job:
  verdict    live, could-go-live, isolated (not proven dead), or grounded (and tested, as drawn)
  margin     how many independent things must go wrong before it is live
  ways       every set of up to three things that would make it live, with the path from the source, and what
             a worker would feel with the grounds as drawn
Then the states of all conductors (--all: each one with its volts, loads on and loads off, and its sources),
and whatever else is wrong.

  --around NAME   of a large drawing only what the work points at one place need, asked of the whole; --openings N
                  as for stillhot cut says how much is listed
  --jobs N        N files at once; the answers come in the order of the files

Positions are taken as drawn. A test in the job's steps counts when it is marked done.

With --json: { file, ok, conductors, elements, workPoints, findings }. ok is false whenever the exit code is
not 0. A number that could not be computed is printed as 1.7976931348623157e+308, which is over every limit,
and a finding "unsolved" stands beside it.

  stillhot check *.stillhot.json --json | jq -r 'select(.ok | not) | .file'
`,
  "cli.noWorkPoint":
    "No work point in this file: add one under job.workPoints to ask what could make it live.",
  "cli.ways": "What could make it live, with every temporary ground lifted: {count}",
  "cli.noJobs": "--jobs takes a whole number from 1 on, not {jobs}",
  "cli.lookFirst": "Look first, for the drawing may be wrong:",
  "cli.lookFirst.working": "Look first, before the order of steps is relied on:",
  "cli.lookFirst.proposed":
    "Look first, before an order of steps such as the command plan would propose is relied on:",
  "cli.lookFirst.noOrder":
    "What to look at first depends on how the work point is taken out: put an order of steps in, as the command plan does, and ask again.",
  "cli.lookFirst.more": "and {count} more; --all lists them",
  "cli.lookFirst.cut": "{count} things farther off were not asked: take them for in doubt too",
  "cli.moreWays": "and {count} more; --all lists them",
  "cli.path": "path: {path}",
  "cli.noPath": "path: none, it is induced",
  "cli.conductors": "Conductors as drawn: {summary}.",
  "cli.conductorsAll": "Conductors as drawn: {summary}. Volts to earth, loads on and loads off:",
  "cli.noConductors": "The drawing has no conductors.",
  "cli.notFinite": "volts or amperes could not be computed at {where}; take everything there for live",

  "cli.rehearse.summary": "Play the job's steps and find what each one breaks",
  "cli.rehearse.help": `
Plays job.steps from the first to the last, whether they are marked done or not, from the positions as drawn.
Each step is held against every rule, and what it brings about is computed from the solved drawing: amperes
broken, fault current, volts across a person, what the detector shows.

With --json: { file, ok, customers, steps, findings, final }. Each step: { n, do, findings, consequence: { kind, amps, volts,
text }, workPoints }; findings are those at the end; final is as check gives it, after the last step. ok is true
when no step gave a danger or a warning; the exit code is 0 when nothing at the end did either.
`,
  "cli.rehearse.noSteps": "There are no steps under job.steps to play.",
  "cli.rehearse.final": "After the last step:",

  "cli.plan.summary": "Put a complete order of steps into the file",
  "cli.plan.help": `
Finds an order of steps from as found, through the work, on to the line in service, that passes every rule: fewest
customers out while work goes on, then at the worst, then fewest operations, then least walking. Steps that the file
has already are replaced.
Prints the file with the steps in job.steps on standard output, and what the order costs on standard error.

  -o OUT   write the file to OUT, or to NAME.stillhot.json in a folder that exists, and print the order of steps
           with its reasons

Where no order was found that passes every rule, the exit code is 1, and what has no control is told. A file
without a work point cannot be planned for.

With --json: { file, ok, steps, customersOut, criticalOut, operations, alternatives, uncontrolled, findings };
each step carries its reason as why.

  stillhot plan tap.stillhot.json | stillhot rehearse -
`,
  "cli.plan.noWorkPoint":
    "there is no work point to plan for, and nothing stands otherwise than it is to be left: add one under job.workPoints, or say under job.leave how things are to be left",
  "cli.plan.none": "No order of steps was found that passes every rule.",
  "cli.plan.broken": "{steps} steps that do not pass every rule: {cost}.",
  "cli.plan.order": "{steps} steps: {cost}.",
  "cli.plan.cost":
    "customers without supply: {asFound} as found, {worst} at the worst, {during} while work goes on, {end} at the end; operations: {operations}",
  "cli.plan.costCritical":
    "customers without supply: {asFound} as found, {worst} at the worst, {during} while work goes on, among them {critical}, {end} at the end; operations: {operations}",
  "cli.plan.instead": "Or: {summary} ({cost}).",
  "cli.plan.uncontrolled": "No control at {where}: {threat}",
  "cli.plan.why": "{step} ({why})",

  "cli.draw.summary": "Print the drawing as SVG",
  "cli.draw.help": `
The picture shows every conductor's state as drawn, by colour, by line pattern and by letter.

  -o OUT          write it to a file, or as NAME.svg into a folder that exists
  --palette NAME  sun (the default), night, or paper (black and white)

With --json: { file, ok, svg }, or { file, ok, out } with -o. The exit code is 0 once the picture is made,
whatever it shows; 1 when the file has keys that this program does not know.
`,
  "cli.draw.noPalette": "there is no palette {name}; there are {known}",
  "cli.wrote": "{file}: written to {out}",

  "cli.sheet.summary": "Print the job-briefing sheet as HTML",
  "cli.sheet.help": `
A page to be printed on Letter or A4: the verdict, the drawing as it stands when work begins, what could still
make it live and what controls it, the five subjects of the briefing, the steps with boxes to tick, what nobody
has seen, names and signatures, and a code that opens the drawing. It needs nothing else: no script, no network.

  -o OUT        write it to a file, or as NAME.html into a folder that exists
  --large       letters a third larger, one column of steps
  --drawn TEXT  when the drawing was last changed, as it is to stand on the sheet; else a blank to fill in
  --app URL     the address of the app, so that a phone's camera opens the drawing; else only the app's own
                scanner reads the code

With --json: { file, ok, fingerprint, html }, or { file, ok, fingerprint, out } with -o. The exit code is 0 once
the sheet is made, whatever it says; 1 when the file has keys that this program does not know.
`,
  "cli.sheet.noApp": "{app} is not an address that starts with http:// or https://",

  "cli.serve.summary": "Serve the app to this machine only",
  "cli.serve.help": `
Prints the address and serves until it is stopped (Ctrl+C). Nothing leaves this machine, and no other
machine can reach it.

  --port N   the port to use (4173), or the next free one; 0 takes any

With --json: { url, port }.`,
  "cli.serve.noApp": "There is no built app here. In a clone, run npm start, or npm run build first.",
  "cli.serve.running": "Serving the app to this machine only; Ctrl+C ends it.",
  "cli.serve.otherPort":
    "Port {wanted} is taken, so this uses {port}. Drawings are kept by address: those made at {usual} are not here. They are there again once that port is free.",
  "cli.serve.noPort": "{port} is not a port: it is a whole number from 0 to 65535",

  "cli.noLanguage": "there is no language {language}; there are {known}",
  "cli.noRegion": "there is no region {region}; there are {known}",
  "cli.regionOfEnglish":
    "--region {region} says whose English is meant, and --language {language} is none: leave one of them out",
  "cli.unknownRule": "no rule is called {id}, so turning it off turns nothing off",
  "cli.unknownRule.near": "no rule is called {id}, so turning it off turns nothing off; did you mean {near}?",
  "cli.unknownRule.help": "write the rule's id as the findings give it, or take the entry out",
  "cli.fileForLanguage":
    "{language} is a file, and --language expects a language before it, one of {known}: --language {first} {language}",
  "cli.noCommand": "There is no command {name}; there are {known}. See stillhot --help",
  "cli.fileForCommand": "{name} is a file; say what to do with it: stillhot check {name}",
  "cli.unknownFlag": "{command} does not know {flag}; it knows {known}",
  "cli.flagTwice": "{flag} is given twice",
  "cli.flagTakesNone": "{flag} takes no value",
  "cli.flagNeedsValue": "{flag} needs a value: {flag} {value}",
  "cli.needsFile": "no FILE was given, or - for standard input",
  "cli.takesNoFile": "it takes no file, and {file} was given",
  "cli.emptyName": "one of the files has an empty name",
  "cli.stdinTwice": "standard input, -, can be read only once",
  "cli.sameOut":
    "{first} and {second} would both be written to {out}; write them one by one, or into two folders",
  "cli.oneOut": "several files do not fit into one {out}; name a folder that exists",

  "cli.stdin": "standard input",
  "cli.noSuchFile": "there is no such file",
  "cli.isFolder": "this is a folder; name the files in it",
  "cli.mayNotRead": "this file may not be read by you",
  "cli.notRead": "this file could not be read: {why}",
  "cli.tooManyBytes": "this has more than {most} MB, which is more than any drawing",
  "cli.utf16": "this is UTF-16 text; save it as UTF-8",
  "cli.notUtf8": "this is not UTF-8 text",
  "cli.oneProblem": "not used, 1 problem",
  "cli.problems": "not used, {count} problems",
  "cli.overDrawing": "{out} is a drawing, and this would take its place: name another file after -o",
  "cli.throughLink": "{out} is a link: name the file that is to be written itself",
  "cli.notWritten": "{out} could not be written: {why}",
  "cli.notDone": "{why}",
  "cli.ourMistake": "Stillhot made a mistake and gives no answer; please report it with the file: {why}",
} as const;
