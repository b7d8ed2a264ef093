/** What the sentences about a pair on the foot are filled in with. */
import type { ParamsOf, StatementCode } from '../../shared/engine/words/statement.ts'

type Code = Exclude<Extract<StatementCode, `onfoot.${string}`>, 'onfoot.by-label'>
export const onFootSamples: { [One in Code]: readonly ParamsOf<One>[] } = {
	'onfoot.too-tight': [
		{ side: 'left', atRisk: false },
		{ side: 'both', atRisk: true },
	],
	'onfoot.loose': [{ side: 'right' }],
	'onfoot.presses': [{ places: { left: ['great-toe', 'instep'], right: [] } }, { places: { left: ['heel'], right: ['heel'] } }],
	'onfoot.presses-at-risk': [{ places: { left: [], right: ['ankle-bones'] } }],
	'onfoot.stud-under': [{ joints: { left: ['first-joint'], right: ['fifth-joint', 'heel-centre'] } }],
	'onfoot.bends-behind': [{ side: 'both' }],
	'onfoot.bends-hardly': [{ side: 'left' }],
	'onfoot.rooms-differ': [{ byLengthMm: 12, standingMm: 6, side: 'left' }],
	'onfoot.comfort-fell': [{ first: 8, later: 6, sessions: 2 }],
	'onfoot.as-asked': [
		{ pair: 'match boots', met: ['wide-fitting'] },
		{ pair: 'match boots', on: '2027-01-20', met: [] },
	],
	'onfoot.not-as-asked': [
		{
			pair: 'match boots',
			on: '2027-01-20',
			length: { insideLengthMm: 250, leastMm: 256, mostMm: 260 },
			sole: { is: 'indoor', asked: 'firm-ground' },
			missing: ['wide-fitting'],
			against: ['stiff-forefoot'],
		},
		{ pair: 'match boots', missing: [], against: ['flexible-forefoot'] },
	],
}
