import type { Schema } from './schema.ts';

/** Short forms of what a field of a file may hold. */

export const text = (description: string): Schema => ({ description, type: 'string' });
export const flag = (description: string): Schema => ({ description, type: 'boolean' });
export const oneOf = (description: string, ...values: string[]): Schema => ({ description, enum: values });
