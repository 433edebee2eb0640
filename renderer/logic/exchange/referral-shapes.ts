/** What is read of HL7 FHIR R4 resources that other systems wrote: only the fields that a referral needs, all else let be. */
import { z } from 'zod';

/** In one line, without control characters. */
const Text = z.string().transform((text) =>
  text
    .replace(/\p{Cc}+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim(),
);
const Coding = z.object({ system: z.string().optional(), code: Text.optional(), display: Text.optional() });
export const Concept = z.object({ text: Text.optional(), coding: z.array(Coding).optional() });
const Referred = z.object({ display: Text.optional() });

export const Name = z.object({
  use: z.string().optional(),
  text: Text.optional(),
  given: z.array(Text).optional(),
  family: Text.optional(),
});
export const Patient = z.object({
  name: z.array(Name).default([]),
  birthDate: z
    .string()
    .regex(/^\d{4}/)
    .optional(),
  communication: z.array(z.object({ language: Concept, preferred: z.boolean().optional() })).default([]),
  generalPractitioner: z.array(Referred).default([]),
});
export const Condition = z.object({
  code: Concept.optional(),
  clinicalStatus: Concept.optional(),
  verificationStatus: Concept.optional(),
  bodySite: z.array(Concept).default([]),
  onsetDateTime: z.string().optional(),
});
export const Allergy = z.object({ code: Concept.optional(), verificationStatus: Concept.optional() });
const Dosage = z.object({
  text: Text.optional(),
  timing: z.object({ repeat: z.object({ timeOfDay: z.array(z.string()).default([]) }).optional() }).optional(),
});
export const Medication = z.object({
  status: z.string().optional(),
  medicationCodeableConcept: Concept.optional(),
  medicationReference: Referred.optional(),
  dosage: z.array(Dosage).default([]),
  dosageInstruction: z.array(Dosage).default([]),
});
export const Service = z.object({
  status: z.string().optional(),
  requester: Referred.optional(),
  reasonCode: z.array(Concept).default([]),
});
export const Goal = z.object({ lifecycleStatus: z.string().optional(), description: Concept });
export const Observation = z.object({
  status: z.string().optional(),
  code: Concept,
  effectiveDateTime: z.string().optional(),
  valueQuantity: z.object({ value: z.number().optional(), unit: Text.optional() }).optional(),
  valueString: Text.optional(),
  valueInteger: z.number().optional(),
  valueBoolean: z.boolean().optional(),
  valueCodeableConcept: Concept.optional(),
});
export const Resource = z.looseObject({ resourceType: z.string() });
export const Bundle = z.object({
  resourceType: z.literal('Bundle'),
  entry: z.array(z.object({ resource: Resource.optional() })).default([]),
});

export type Concept = z.output<typeof Concept>;
export type Name = z.output<typeof Name>;
export type Resource = z.output<typeof Resource>;
