/** What a call of the host is: its input, its output, and who may make it. */
import type { z } from 'zod'

export const roles = ['nobody', 'clinician', 'student', 'reception', 'owner'] as const
export type Role = (typeof roles)[number]

/** A row of the contract. */
export function call<Input extends z.ZodType, Output extends z.ZodType>(
	input: Input,
	output: Output,
	who: readonly Role[],
) {
	return { input, output, who }
}
export const anyone: readonly Role[] = [...roles]
export const staff: readonly Role[] = ['clinician', 'student', 'reception', 'owner']
export const clinicians: readonly Role[] = ['clinician', 'owner']
/** Students write and sign under countersignature. */
export const treating: readonly Role[] = ['clinician', 'student', 'owner']
export const desk: readonly Role[] = ['clinician', 'reception', 'owner']
export const owners: readonly Role[] = ['owner']
