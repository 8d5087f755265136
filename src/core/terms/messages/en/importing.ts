/** What an importer tells of a file that is not Stillhot's own: what was done on its own account, and why; and what cannot be read. */
export const importing = {
  // ---- assumed: the file does not say ----
  "importing.kilovolts": "kilovolts, megawatts and kilometres taken for the units",
  "importing.kilovolts.why": "the profile in the header is an exchange profile of transmission operators",
  "importing.zeroSequence": "zero sequence taken as 2 r, 3 x and 0.6 of the charging",
  "importing.zeroSequence.why": "the file gives the positive sequence alone; common practice, no source",
  "importing.terminalOrder": "terminals taken in the order of the file",
  "importing.terminalOrder.why": "they carry no sequence number",
  "importing.acResistance": "resistance taken as 1.02 times the one for direct current",
  "importing.acResistance.why": "the file gives none for alternating current",
  "importing.lineFromTable": "impedance taken from the program's own table of wires",
  "importing.lineFromTable.why": "the file gives the line neither impedance nor wires",
  "importing.sourceVolts": "source volts taken from the nominal volts",
  "importing.sourceVolts.why": "the file does not give what the source stands at",
  "importing.sourceOhms": "impedance of the source taken as the program's default",
  "importing.sourceOhms.why": "the file gives none, so fault currents are a guess",
  "importing.sourceZero": "zero sequence of the source taken as its positive sequence",
  "importing.sourceZero.why": "the file does not give it",
  "importing.linkType": "fuse link taken as type K",
  "importing.linkType.why": "the standard has the amperes of a fuse and not its curve",
  "importing.remote": "taken as remotely controlled and reclosing",
  "importing.remote.why": "the file does not say; this is the answer that warns",
  "importing.position": "position taken from the normal one",
  "importing.position.why": "the file does not say how it stands now: look",
  "importing.phasesOfNeighbours": "phases taken from the equipment around",
  "importing.phasesOfNeighbours.why": "the file gives none, and all three are not there",
  "importing.groundSwitch": "closed ground switch drawn as a ground set through 1 Ω",
  "importing.groundSwitch.why":
    "it is a fixed switch and no temporary ground of a crew's; its earth is not in the file",
  "importing.wye": "load taken as wye, to the neutral",
  "importing.wye.why": "the file does not say how it is connected",
  "importing.constantPower": "load taken as constant power",
  "importing.constantPower.why": "the file does not say how it answers to other volts",
  "importing.customers": "one customer taken to be there",
  "importing.customers.why": "the file does not count them, and any customer may own a generator",
  "importing.machineOff": "machine drawn as off",
  "importing.machineOff.why":
    "the file gives what it feeds in, and a machine here is a voltage of its own: running, it would invent flows. It can start",
  "importing.leakage": "leakage impedance taken from the table of common transformers",
  "importing.leakage.why": "the file gives none",
  "importing.clock": "low side taken to lag by 30°",
  "importing.clock.why": "the file does not give the clock number",
  "importing.noCore": "no exciting current",
  "importing.noCore.why": "the file gives no test of the core",
  "importing.tapPosition": "position of the regulator taken from its normal step",
  "importing.tapPosition.why": "the file does not say where it stands now",
  "importing.perfectEarth": "neutral drawn as perfect earth",
  "importing.perfectEarth.why":
    "asked for: good for volts and currents, useless for grounds and broken neutrals",
  "importing.rods": "driven ground put in, 25 Ω at a pole and 1 Ω at a station",
  "importing.rods.why": "models have no rods; common practice, no source",
  "importing.meter": "meter put in ahead of a service's loads",
  "importing.meter.why": "models seldom have them, and they can be pulled",
  "importing.noPlaces": "no places",
  "importing.noPlaces.why": "the file has no locations, so the drawing is laid out by the program",
  "importing.frequency": "60 Hz",
  "importing.frequency.why": "the file does not say; ask for 50 with --hertz 50",

  // ---- left out: the file says it, the drawing does not hold it ----
  "importing.namespace": "passed over: of another namespace, {uri}",
  "importing.namespace.why": "it is not of the standard",
  "importing.class": "left out: {className}",
  "importing.class.why": "nothing on a drawing of this kind answers to it",
  "importing.outOfService": "left out: out of service",
  "importing.outOfService.why": "the file says that it is not in service",
  "importing.swappedPhases": "left out: it joins {first} with {second}",
  "importing.swappedPhases.why":
    "the drawing joins like with like. What it would feed is not fed here: draw it by hand before anything is believed",
  "importing.openGroundSwitch": "left out: an open ground switch",
  "importing.openGroundSwitch.why": "open, it changes nothing",
  "importing.idleWinding": "left out: a third winding on which nothing hangs",
  "importing.idleWinding.why": "the drawing's transformers have two",
  "importing.onNothing": "left out: nothing leads to where it stands",
  "importing.onNothing.why": "there is no conductor at that node for it to hang on",
  "importing.emptyNode": "left out: a node with nothing on it",
  "importing.emptyNode.why": "no equipment that is drawn ends there",

  "importing.unknownProperty": "kept in a note: properties that the convention does not know",
  "importing.unknownProperty.why": "nothing is reckoned from them",
  "importing.featureClass": "left out: features of class {className}",
  "importing.featureClass.why": "the convention does not know them",

  // ---- approximated: the drawing holds it less exactly ----
  "importing.disconnected": "drawn with an end on a point of its own",
  "importing.disconnected.why": "the file says that this terminal is not connected",
  "importing.foldedNeutral": "neutral drawn with next to no impedance",
  "importing.foldedNeutral.why":
    "the model's matrix holds the neutral's drop inside the phases: a real neutral stands at some volts to tens of volts, which this hides",
  "importing.linkSize": "drawn as a cutout with a solid blade",
  "importing.linkSize.why": "its amperes are no size of a fuse link",
  "importing.gangInPart": "drawn as single-pole",
  "importing.gangInPart.why": "it is open on some of its phases, which a gang device cannot be",
  "importing.exponent": "load drawn as the nearest of impedance, current and power",
  "importing.exponent.why": "its exponent is between them",
  "importing.tapInRatio": "taps counted into the ratio",
  "importing.tapInRatio.why": "the drawing's transformers have no taps",
  "importing.turnedUnit": "drawn with its first letter first",
  "importing.turnedUnit.why":
    "the model has the winding the other way round: its secondary is half a turn off",
  "importing.idealRegulator": "regulator drawn without leakage",
  "importing.idealRegulator.why": "its own impedance is small beside the line's",
  "importing.tapRounded": "{percent} % of the regulator's ratio lost",
  "importing.tapRounded.why": "its steps are no whole number of 0.625 %",
  "importing.longLabel": "name shortened",
  "importing.longLabel.why": "it has more than 200 letters",
  "importing.noScale": "places fitted to the sheet, not to scale",
  "importing.noScale.why": "distances and lengths of the lines do not agree",

  // ---- warnings ----
  "importing.newSchema": "a newer version of the standard: {uri}",
  "importing.newSchema.why": "what is new in it is not known here",
  "importing.givenTwice": "{name} given twice",
  "importing.givenTwice.why": "the first figure stands",
  "importing.notNormal": "stands otherwise than is normal",
  "importing.notNormal.why": "somebody switched it: find out who and why",
  "importing.switchedCapacitor": "switched by itself",
  "importing.switchedCapacitor.why": "the file has a control for it: it may come back at any time",
  "importing.island": "no source leads there",
  "importing.island.why": "nobody knows from this file what feeds it: treat it as live",
  "importing.noSource": "no source in the file",
  "importing.noSource.why": "draw what feeds it before anything is believed",
  "importing.crossings": "crossing and neighbouring circuits are not in the file",
  "importing.crossings.why": "models of this kind have none: look up at every span",

  // ---- errors ----
  "importing.error.tooLong": "more than {most} million letters; cut the model into feeders first",
  "importing.error.tooManyObjects": "more than {most} objects; cut the model into feeders first",
  "importing.error.oldSchema":
    "the schema {uri} is version {version} of the standard; expected {oldest} or newer, since phases and tanks were another thing before",
  "importing.error.noObjects": "no object of the standard is in it; expected a model in RDF/XML",
  "importing.error.doctype": "a document type is not accepted in a model file",
  "importing.error.xml": "the file is not whole or not XML: {why}",
  "importing.error.notRdf": "the file begins with <{found}>; expected <rdf:RDF>",
  "importing.error.difference": "this is a change to a model, not a model: import the full model",
  "importing.error.noId": "a {className} has neither rdf:ID nor rdf:about; expected one",
  "importing.error.twoClasses": "{id} is both a {first} and a {second}; expected one class",
  "importing.error.twoValues":
    '{className} {id}: {name} is both "{first}" and "{second}"; expected one value',
  "importing.error.noNumber": '{object}: {name} is "{found}"; expected a number',
  "importing.error.units":
    "every nominal voltage and every load is under 1000 and no header says in which units: say --units plain for volts and watts, or --units kilo for kilovolts and megawatts",
  "importing.error.oneTerminal": "{object}: 1 terminal found; expected {expected}.",
  "importing.error.terminals": "{object}: {found} terminals found; expected {expected}.",
  "importing.error.noNode":
    'Terminal {terminal} (end {number} of {className} "{name}", {id}): it names no node; expected a ConnectivityNode or TopologicalNode.',
  "importing.error.nodeMissing":
    'Terminal {terminal} (end {number} of {className} "{name}", {id}): ConnectivityNode {node} is not in the file; expected a ConnectivityNode or TopologicalNode with that id. A part of the model may be missing.',
  "importing.error.missing":
    "{object}: its {what} {id} is not in the file. A part of the model may be missing.",
  "importing.error.matrixSize":
    "{line}: {data} has conductorCount {count}, but the line has {size} phases ({phases}); expected as many conductors as phases.",
  "importing.error.matrixEntries":
    "{line}: of {data} the entries {missing} are missing; expected every row >= column once.",
  "importing.error.matrixSizeAndEntries":
    "{line}: {data} has conductorCount {count}, but the line has {size} phases ({phases}); and its entries {missing} are missing; expected every row >= column once, and as many conductors as phases.",
  "importing.error.matrixTwice": "{line}: {data} gives {twice} twice, with different values; expected one.",
  "importing.error.wires":
    "{line}: no wire or no position for {letter}; expected WireInfo with gmr, radius and resistance, and a WirePosition.",
  "importing.error.sourceVolts":
    "{object}: no volts; expected voltageMagnitude, nominalVoltage or a BaseVoltage.",
  "importing.error.capacitorVolts": "{object}: no rated volts; expected nomU or a BaseVoltage.",
  "importing.error.machine": "{object}: no ratings; expected ratedS, and ratedU or a BaseVoltage.",
  "importing.error.windings": "{object}: winding ends found: {found}; expected 2 or more.",
  "importing.error.ratings": "{object}: rated volts or kVA are missing or zero.",
  "importing.error.thirdWinding":
    "{object}: {windings} windings with something on each; expected two, or a third on which nothing hangs.",
  "importing.error.connection": "{object}: connected {connection}; expected D-Yg, Yg-Yg, Y-D, Yg-D or D-D.",
  "importing.error.clock":
    "{object}: {connection} with clock number {clock} leads or is turned; expected a low side that lags by 30°, or no turn where both sides are alike.",
  "importing.error.tankInfo":
    "{tank} of {transformer}: its TransformerTankInfo {id} is not in the file, so rated volts, kVA and impedance are unknown; expected TransformerTankInfo with a TransformerEndInfo for ends 1 and 2.",
  "importing.error.endInfo":
    "{tank} of {transformer}: no TransformerEndInfo with rated volts and kVA for end {number}; expected one.",
  "importing.error.tankPhases":
    "{tank}: phases {phases} are no unit of ours; expected a phase to the neutral or two phases, against s1N and Ns2, s12N, or the same phase.",
  "importing.error.legsApart": "{tank}: its two halves end on different nodes; expected one.",
  "importing.error.phaseNotThere":
    '{object}: phase {phase} at "{place}", but only phase {there} reaches that node ({lines}); expected one of {there}.',
  "importing.error.phasesNotThere":
    '{object}: phase {phase} at "{place}", but only phases {there} reach that node ({lines}); expected one of {there}.',
  "importing.error.notMap": "no map and no model: expected a FeatureCollection of GeoJSON, or CIM in RDF/XML",
  "importing.error.crs": "crs {found}: expected longitude and latitude in WGS 84: export in WGS 84",
  "importing.error.featureId": "feature {number} has no id; expected one in the feature or its properties",
  "importing.error.featureTwice": "{id}: two features have this id; expected one",
  "importing.error.parts": "{id}: a line of several parts; expected one part",
  "importing.error.position":
    "{id}: found position {found}; expected longitude from -180 to 180 and latitude from -90 to 90: export in WGS 84",
  "importing.error.cell": '{id}: {key} is "{found}"; expected something like {expected}',
  "importing.error.deviceKind": '{id}: device "{found}" is no kind of the convention',
  "importing.error.deviceOn": '{id}: on "{found}" is no point of the file, and none lies near enough',
  "importing.error.deviceToward": '{id}: toward "{found}" is no span or transformer of the file',
  "importing.error.devicePhase": "{id}: phase {phase} is not on {fed}, which it feeds",
  "importing.error.spanEndId": '{id}: {key} "{found}" is no point and no transformer of the file',
  "importing.error.spanEnd":
    "{id}: the end at {key} lies {metres} m from {nearest}, the nearest point; expected {most} m or less, or {key}",
  "importing.error.drawing": "the drawing made of it is not sound at {path}: {message}",
  "importing.error.more": "and {count} more",
} as const;
