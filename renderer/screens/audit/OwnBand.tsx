/** The clinic's own error of the foot forecast beside the one in force, and how it is taken over. */
import { Box, Button, Typography } from '@mui/material'
import type { OwnBand as Own } from '../../../shared/desk/clinic-audit/calls.ts'
import { number } from '../../../shared/engine/words/en/format.ts'
import { loadProtocol } from '../../parts/clinicProtocol.ts'
import { Outcome } from '../../parts/form.tsx'
import { Panel } from '../../parts/panels.tsx'
import { change, useHostAction } from '../../query.ts'

type Band = Own['inForce']
const bandWords = ({ low, high }: Band): string => `${number(low, 2)} to ${number(high, 2)}`
const isSame = (one: Band, other: Band): boolean => one.low === other.low && one.high === other.high

function standingWords({ forecasts, least, band }: Own): string {
	if (band) return `Own: ${bandWords(band)} of the mean growth, of ${forecasts} forecasts.`
	return forecasts === undefined
		? `Own: too few forecasts to show. It can be taken from ${least} on.`
		: `Own: ${forecasts} forecasts so far. It can be taken from ${least} on.`
}
export function OwnBand({ own, days }: { own: Own; days: { from: string; to: string } }) {
	const action = useHostAction()
	const { band, inForce, isTaken } = own
	const take = (chosen: Band) =>
		action.run(async () => {
			await change('clinicAudit.adopt', { ...days, band: chosen })
			await loadProtocol()
			return 'Taken into the protocol as a new version. Forecasts made from now on use it.'
		})
	const setBack = () =>
		action.run(async () => {
			await change('clinicAudit.setBack', {})
			await loadProtocol()
			return 'Set back, as a new version.'
		})
	return (
		<Panel
			title="Band of the foot forecast"
			hint="Nothing is taken over by itself. Signed visits keep the band they were signed with; the protocol's versions name who took it and why."
		>
			<Typography>
				In force: {bandWords(inForce)} of the mean growth
				{isTaken ? ', of the own forecasts.' : '.'}
			</Typography>
			<Typography>{standingWords(own)}</Typography>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1.5, mt: 1 }} className="lw-screen-only">
				{band && !isSame(band, inForce) && (
					<Button variant="outlined" disabled={action.busy} onClick={() => take(band)}>
						Take the own band ({bandWords(band)})
					</Button>
				)}
				{isTaken && (
					<Button variant="outlined" disabled={action.busy} onClick={setBack}>
						Set back to what it was before
					</Button>
				)}
			</Box>
			<Outcome of={action} />
		</Panel>
	)
}
