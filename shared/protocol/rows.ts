/** Every threshold the clinic may set, one file per room. Keys are 'room.name'. */
import { ankleRows } from './rows/ankle.ts'
import { footwearRows } from './rows/footwear.ts'
import { growthRows } from './rows/growth.ts'
import { insertRows } from './rows/insert.ts'
import { loadingRows } from './rows/loading.ts'
import { postureRows } from './rows/posture.ts'
import { screeningRows } from './rows/screening.ts'
import { seasonRows } from './rows/season.ts'
import { sizingRows } from './rows/sizing.ts'
import { squadRows } from './rows/squad.ts'

export const rows = { ...sizingRows, ...ankleRows, ...postureRows, ...growthRows, ...screeningRows, ...footwearRows, ...loadingRows, ...insertRows, ...seasonRows, ...squadRows }
