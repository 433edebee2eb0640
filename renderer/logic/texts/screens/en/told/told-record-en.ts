/** What logic says on the other screens (record, sample, read back, progress, caseload), a group for each theme. */
export const toldRecordEn = {};
