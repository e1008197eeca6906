/** g/mol of the anhydroglucose unit C6H10O5. */
export const ANHYDROGLUCOSE = 162.141;
/** g/mol that one quaternary group adds: 2-hydroxy-3-trimethylammoniopropyl chloride, less H. */
export const QUATERNARY_CHLORIDE = 151.634;
/** g/mol of the one nitrogen of a group. */
export const NITROGEN = 14.007;

/**
 * Quaternary groups per anhydroglucose unit from the mass share N of nitrogen in dry starch.
 *
 * A unit with DS groups weighs 162.141 + 151.634·DS and holds 14.007·DS of nitrogen; solved for DS:
 * DS = 162.141·N/(14.007 − 151.634·N).
 * Limits: quaternary groups in the chloride form, all nitrogen bound in them (the protein of native
 * starch taken off as a blank); N up to 0.068, where each of the three hydroxyls of a unit bears a group.
 * Source: stoichiometry, with the abridged atomic masses of IUPAC/CIAAW (2021).
 */
export function substitutionFromNitrogen(nitrogen: number): number {
  return (ANHYDROGLUCOSE * nitrogen) / (NITROGEN - QUATERNARY_CHLORIDE * nitrogen);
}

/** The inverse: mass share of nitrogen from the degree of substitution. */
export function nitrogenFromSubstitution(substitution: number): number {
  return (NITROGEN * substitution) / unitMass(substitution);
}

/** g/mol of one anhydroglucose unit with its share of quaternary groups. */
export function unitMass(substitution: number): number {
  return ANHYDROGLUCOSE + QUATERNARY_CHLORIDE * substitution;
}
