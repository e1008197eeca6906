/** The usual cautions of a task. They inform; they do not replace training, permit or data sheet. */
export interface Task {
  readonly name: string;
  readonly cautions: readonly string[];
}

export const TASKS: readonly Task[] = [
  {
    name: "Handling powder",
    cautions: [
      "A cloud of starch, gum, carboxymethyl cellulose or polyacrylamide powder can explode. Starches, carboxymethyl cellulose, locust bean gum and polyacrylamide stand on OSHA's list of combustible dusts (combustible dust poster).",
      "Keep dust from settling on beams and floors. Remove it with a vacuum cleaner made for combustible dust; do not blow with compressed air or sweep dry.",
      "Keep ignition away: no smoking, hot work by permit only, earthed hoses, bags and silos, equipment rated for the zone.",
      "A vent or suppression is designed by specialists from a test of the powder on site, never from a typical value. Rules by name: NFPA 660; 1999/92/EC and 2014/34/EU.",
      "Dust in air, starch, mean of 8 hours: 15 mg/m³ in all and 5 mg/m³ respirable (OSHA); 10 mg/m³ in all recommended (NIOSH). Local limits may be lower.",
      "Wear eye protection, gloves and a dust mask of the class that the data sheet names. Empty bags under extraction, downwind of nobody.",
      "Lift bags with a hoist or with two people. Spilt powder on a wet floor is slippery at once.",
    ],
  },
  {
    name: "Cooking",
    cautions: [
      "Cooked starch is near boiling and sticks: it burns deeply. Wear a face shield, long gloves, apron and boots at samples, strainers and drains.",
      "A jet cooker holds 110 to 130 °C under pressure (typical, from memory). Only trained people run it; pressure equipment and steam lines are inspected and mended by licensed people.",
      "Before opening anything: stop, isolate and lock out, let it cool, release the pressure, drain, and prove that it is empty.",
      "Never block or wedge a relief valve, an interlock or a level switch. Lead relief lines to a safe place.",
      "Flush with water before each stop. Starch that sets blocks lines, valves and gauges, and then a gauge that reads 0 may not mean 0.",
      "Add powder to cold moving water, not water to powder; hot water on dry powder spits and lumps.",
      "Enzymes and oxidants for starch are hazards of their own, and dust or mist of enzymes makes people allergic: read their data sheets, and never mix an acid with hypochlorite or sulphite.",
    ],
  },
  {
    name: "Storage",
    cautions: [
      "Stagnant starch, stock or white water turns sour and can give off hydrogen sulphide and other gases: keep it moving, cool, and short; clean tanks on a schedule.",
      "Do not stand over an opened tank that has stood still. See Confined spaces before any entry, even with the head only.",
      "Nobody enters or walks on powder in a silo: it flows and bridges, and it buries.",
      "Biocides that keep starch and white water from rotting burn skin, lungs and eyes, and some release formaldehyde or chlorine: never mix two of them, nor one with acid or additive, and dose them from closed containers.",
      "Keep powder dry and away from oxidants, acids and heat. Close opened bags.",
      "Keep solutions and emulsions from freezing and within their shelf life, in a bund that holds the largest vessel.",
      "Label every tank and line with what is in it, its strength and its date.",
    ],
  },
  {
    name: "Spills",
    cautions: [
      "Spilt polymer, gum or starch solution is extremely slippery, and again whenever it gets wet. Close off the place first.",
      "Take up liquid with an absorbent and a scoop before any water is used; then rinse until the floor no longer feels slick.",
      "Take up powder without raising dust. Do not wash it into a drain, where it gels.",
      "Keep spills out of storm drains and watercourses: they take oxygen from the water, and cationic polymers harm fish.",
      "Tell the effluent plant at once, with the amount: a load that is known of can be caught.",
      "Wear what the data sheet says; burns by hot starch are cooled with water and seen by a doctor.",
    ],
  },
  {
    name: "Confined spaces",
    cautions: [
      "Chests, tanks, silos, pits, sewers and headboxes are entered only with a permit, an attendant outside, isolation of every inlet and drive, ventilation, and a rescue that has been practised.",
      "Hydrogen sulphide can kill in minutes. At high levels it cannot be smelled; it is heavier than air and may come out only when sludge is stirred (SafeWork NSW, safety alert, 12 June 2018, after two deaths at a paper mill).",
      "Test the air from outside, at several depths, and go on testing: oxygen, then combustible gas, then poisons. Rule by name: 29 CFR 1910.146.",
      "Carbon dioxide from fermenting starch displaces oxygen without a warning smell.",
      "Do not go in after somebody who has collapsed. Raise the alarm; only equipped and trained rescuers enter.",
      "Work in confined spaces needs people who are trained and authorised for it under local law.",
    ],
  },
  {
    name: "Laboratory",
    cautions: [
      "Wear eye protection, gloves and a coat. Know where the eyewash is, and that it works.",
      "A beaker of hot starch boils over suddenly in a microwave oven or on a plate: stir, use a large vessel, and hold it with gloves.",
      "The COD test uses dichromate in strong sulphuric acid, often with mercury and silver: use closed ready-made tubes in a fume cupboard, and collect the waste as hazardous.",
      "A furnace at 525 or 900 °C needs tongs, a shield and a cool place for crucibles.",
      "Sheet press, disintegrator, guillotine and tensile tester catch fingers: use their guards.",
      "Weigh powders without a draught; make polymer solutions with a lid, since drops on the floor are slippery.",
      "Label each solution with what it is, its strength, its date and your name. Nothing to eat or drink at the bench.",
    ],
  },
  {
    name: "Effluent",
    cautions: [
      "What is not retained is oxygen demand. Tell the effluent plant before a trial or a change of dose, with the expected load and its duration.",
      "A sudden load of starch takes the oxygen of the aeration basin and feeds filamentous growth: raise the dose in steps and watch the dissolved oxygen.",
      "The permit decides. A calculation does not show that the discharge is lawful: measure, with the method that the permit names.",
      "Cationic polymers harm fish and can upset the biology: never to a watercourse, and never undiluted to the plant.",
      "Sewers, sumps and basins hold hydrogen sulphide and people drown in them: sample from a fenced place, not alone.",
      "Solutions that are thrown away go where the waste rules say, not down the nearest drain.",
    ],
  },
];
