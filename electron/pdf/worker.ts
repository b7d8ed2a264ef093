/** The beginning of a thread that works on pages: with the program's compiled text, if it has one. */
import { enableCompileCache } from 'node:module'
import { workerData } from 'node:worker_threads'

const { compiled } = workerData as { compiled: string | undefined }
// a thread does not share it by itself
if (compiled !== undefined) enableCompileCache(compiled)
await import('./work.ts')
