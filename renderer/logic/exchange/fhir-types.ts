/** The shapes of HL7 FHIR R4 that an export is made of, from the published definitions (@types/fhir, global name fhir4). Types only. */

export type Annotation = fhir4.Annotation;
export type Bundle = fhir4.Bundle;
export type CarePlan = fhir4.CarePlan;
export type CarePlanActivity = fhir4.CarePlanActivity;
export type CodeableConcept = fhir4.CodeableConcept;
export type Condition = fhir4.Condition;
export type Device = fhir4.Device;
export type DocumentReference = fhir4.DocumentReference;
export type Encounter = fhir4.Encounter;
export type FhirResource = fhir4.FhirResource;
export type Goal = fhir4.Goal;
export type Observation = fhir4.Observation;
export type ObservationComponent = fhir4.ObservationComponent;
export type Patient = fhir4.Patient;
export type Quantity = fhir4.Quantity;
export type QuestionnaireResponse = fhir4.QuestionnaireResponse;
export type QuestionnaireResponseItem = fhir4.QuestionnaireResponseItem;
export type Reference = fhir4.Reference;
