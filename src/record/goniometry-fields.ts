export * from '../hand/goniometry-fields.ts';
