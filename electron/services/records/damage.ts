/** Whether an error means that what is stored was damaged, and not that something else failed. */
import { SealBroken } from '../../store/seal.ts'

const databaseDamage = /malformed|corrupt|not a database/i

export const isDamage = (error: unknown): boolean =>
	error instanceof SealBroken ||
	error instanceof SyntaxError ||
	(error instanceof Error && 'errcode' in error && databaseDamage.test(error.message))
