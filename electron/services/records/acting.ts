import { AsyncLocalStorage } from 'node:async_hooks'
import type { Actor } from '../../store/store.ts'

/**
 * Who makes the call that is running; survives its awaits, so that two calls at once do not mix.
 */
export const acting = new AsyncLocalStorage<Actor>()
