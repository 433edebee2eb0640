/**
 * What follows from a part of the rule table alone is derived once. Parts are never changed in place: a clinic's edit
 * makes new ones, so that nothing derived outlives what it was derived from.
 */
export function onceFor<Part extends object, Derived>(derive: (part: Part) => Derived): (part: Part) => Derived {
  const known = new WeakMap<Part, { derived: Derived }>();
  return (part) => {
    let found = known.get(part);
    if (!found) known.set(part, (found = { derived: derive(part) }));
    return found.derived;
  };
}

type Coded = { code: string };
const rowsByCode = onceFor(
  (rows: readonly Coded[]): ReadonlyMap<string, Coded> => new Map(rows.map((each) => [each.code, each])),
);

/** Rows of a part by their code. */
export const byCode = <Row extends Coded>(rows: readonly Row[]): ReadonlyMap<string, Row> =>
  rowsByCode(rows) as ReadonlyMap<string, Row>;
