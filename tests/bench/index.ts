/** Runs every bench, prints value and limit, and ends with 1 where a limit is passed. */

import ownTemporary from '../temporary.ts'
import { manyReportsBench } from './many-reports.ts'
import { matchBench } from './match.ts'
import { paceBench } from './pace.ts'
import { recordsBench } from './records.ts'
import { reportBench } from './report.ts'
import { seasonBench } from './season.ts'
import { shareBench } from './share.ts'
import { squadBench } from './squad.ts'

interface Line {
	name: string
	value: number
	unit: string
	limit: number
}
const benches: Record<string, () => Promise<Line[]>> = {
	season: seasonBench,
	match: matchBench,
	squad: squadBench,
	report: reportBench,
	many: manyReportsBench,
	records: recordsBench,
	pace: paceBench,
	share: shareBench,
}
const clearUp = ownTemporary()
const asked = process.argv.slice(2)
for (const [name, run] of Object.entries(benches)) {
	if (asked.length > 0 && !asked.includes(name)) continue
	for (const line of await run()) {
		const over = line.value > line.limit
		process.stdout.write(
			`${line.name}: ${line.value.toFixed(4)} ${line.unit} ` +
				`(${Number.isFinite(line.limit) ? `limit ${line.limit}` : 'no limit'})${over ? ' OVER' : ''}\n`,
		)
		if (over) process.exitCode = 1
	}
}
clearUp()
