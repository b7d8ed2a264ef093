/** Every threshold the clinic may set, one file per room. Keys are 'room.name'. */
import { ankleRows } from './rows/ankle.table.ts'
import { auditRows } from './rows/audit.table.ts'
import { conditionRows } from './rows/conditions.ts'
import { footwearRows } from './rows/footwear.table.ts'
import { growthRows } from './rows/growth.table.ts'
import { insertRows } from './rows/insert.table.ts'
import { loadingRows } from './rows/loading.table.ts'
import { onFootRows } from './rows/on-foot.table.ts'
import { playerRows } from './rows/player.table.ts'
import { postureRows } from './rows/posture.table.ts'
import { prescriptionRows } from './rows/prescription.table.ts'
import { raiseRows } from './rows/raise.table.ts'
import { screeningRows } from './rows/screening.table.ts'
import { seasonRows } from './rows/season.table.ts'
import { sizingRows } from './rows/sizing.table.ts'
import { squadRows } from './rows/squad.table.ts'

export const rows = {
	...playerRows,
	...sizingRows,
	...ankleRows,
	...postureRows,
	...growthRows,
	...screeningRows,
	...footwearRows,
	...loadingRows,
	...insertRows,
	...raiseRows,
	...seasonRows,
	...prescriptionRows,
	...squadRows,
	...auditRows,
	...conditionRows,
	...onFootRows,
}
