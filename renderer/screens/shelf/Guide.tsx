/** How to measure a model for the shelf: one drawing and a few steps each. */
import { Box, Stack, Typography } from '@mui/material'
import type { ReactNode } from 'react'
import { Panel } from '../../parts/panels.tsx'

/** A boot seen from the side, heel to the left, on its sole. */
const upper = 'M 22 84 L 20 44 Q 26 32 42 36 L 84 40 Q 118 56 158 60 Q 208 62 222 82 L 222 84 Z'
const soleSide = 'M 20 84 L 224 84 Q 226 98 212 98 L 96 96 Q 84 100 72 104 L 24 104 Q 18 96 20 84 Z'
const soleTop =
	'M 20 60 C 20 38 34 34 60 36 C 96 40 112 28 150 22 C 196 18 226 40 222 58 C 220 84 188 100 ' +
	'152 94 C 118 88 96 80 60 84 C 34 86 20 82 20 60 Z'
const ink = { fill: 'none', stroke: 'currentColor', strokeWidth: 1.5 } as const
const strong = { fill: 'none', stroke: 'var(--lw-focus)', strokeWidth: 2.2 } as const

/** A measured distance: a line with a bar at each end. */
function Span({
	from: [x1, y1],
	to: [x2, y2],
	says,
	at,
}: {
	from: [number, number]
	to: [number, number]
	says: string
	at: [number, number]
}) {
	const long = Math.hypot(x2 - x1, y2 - y1)
	const [dx, dy] = [(-(y2 - y1) / long) * 5, ((x2 - x1) / long) * 5]
	return (
		<g>
			<path
				{...strong}
				d={
					`M ${x1} ${y1} L ${x2} ${y2} M ${x1 - dx} ${y1 - dy} L ${x1 + dx} ${y1 + dy} M ` +
					`${x2 - dx} ${y2 - dy} L ${x2 + dx} ${y2 + dy}`
				}
			/>
			<text x={at[0]} y={at[1]} fontSize="11" textAnchor="middle" fill="currentColor">
				{says}
			</text>
		</g>
	)
}
function Drawing({ says, children }: { says: string; children: ReactNode }) {
	return (
		<Box
			component="svg"
			role="img"
			aria-label={says}
			viewBox="0 0 246 124"
			sx={{ width: '100%', maxWidth: 420, display: 'block' }}
		>
			{children}
		</Box>
	)
}
/** Places of the drawn studs. */
const studPlaces = [
	{ x: 44, y: 48 },
	{ x: 44, y: 72 },
	{ x: 74, y: 48 },
	{ x: 74, y: 74 },
	{ x: 138, y: 38 },
	{ x: 138, y: 82 },
	{ x: 168, y: 36 },
	{ x: 172, y: 82 },
	{ x: 200, y: 48 },
	{ x: 200, y: 70 },
]
const stud = ({ x, y }: (typeof studPlaces)[number]) => (
	<circle key={`${x} ${y}`} cx={x} cy={y} r="4.5" fill="currentColor" opacity="0.55" />
)
const parts: readonly { title: string; steps: readonly string[]; drawing: ReactNode }[] = [
	{
		title: 'Inside length',
		steps: [
			'Leave the liner in, laces open, as it will be worn.',
			'Cut a strip of stiff card about 10 mm wide and longer than the boot. Slide it along the ' +
				'middle of the liner until it touches the toe; do not let it bow.',
			'Mark it where the inside of the heel meets it, low down, and read the strip to 1 mm. Do ' +
				'it three times; note the mean.',
			'Measure each size you can get hold of. Do not work sizes out from one another: the steps ' +
				'are not even.',
		],
		drawing: (
			<Drawing
				says={
					'A boot cut open from the side: the distance inside, along the liner, from the ' +
					'heel to the tip of the toe'
				}
			>
				<path {...ink} d={upper} />
				<path {...ink} d={soleSide} />
				<Span from={[26, 78]} to={[216, 78]} says="inside length" at={[130, 72]} />
			</Drawing>
		),
	},
	{
		title: 'Inside width at the ball',
		steps: [
			'Find where the boot is widest in front of the midfoot. Feel for it from inside.',
			'Close an inside caliper, put it in, and open it along the liner until it just touches ' +
				'both walls. Do not press the upper outwards.',
			'No caliper: two strips of card pushed apart until they touch, held together with a clip, ' +
				'then measured.',
			'Note each fitting as a line of its own, with its letter.',
		],
		drawing: (
			<Drawing
				says={
					'A sole from above: the distance across the widest part of the forefoot, from ' +
					'wall to wall inside'
				}
			>
				<path {...ink} d={soleTop} />
				<path
					{...ink}
					strokeDasharray="3 3"
					d={
						'M 26 60 C 26 44 38 40 60 42 C 96 46 114 34 150 28 C 190 24 218 42 216 58 C ' +
						'214 78 186 94 152 88 C 118 82 96 74 60 78 C 38 80 26 76 26 60 Z'
					}
				/>
				<Span from={[158, 28]} to={[158, 88]} says="width at the ball" at={[108, 62]} />
			</Drawing>
		),
	},
	{
		title: 'Toe-box depth',
		steps: [
			'Liner in. Measure over the big toe, about 20 mm behind the front of the inside.',
			'Put a small ball of putty there, press the upper down lightly as a sock would hold it ' +
				'up, and take the putty out; or use a depth gauge through the opening.',
			'Read to 1 mm. A note beside it is worth more than half a millimetre: does the upper give?',
		],
		drawing: (
			<Drawing
				says={
					'A boot from the side: the height inside, from the liner to the upper, over the ' + 'toes'
				}
			>
				<path {...ink} d={upper} />
				<path {...ink} d={soleSide} />
				<Span from={[196, 66]} to={[196, 82]} says="toe-box depth" at={[196, 50]} />
			</Drawing>
		),
	},
	{
		title: 'Heel and forefoot stack',
		steps: [
			'The stack is all that stands between foot and ground without the studs: liner, board, ' +
				'midsole, plate.',
			'Use a caliper with long arms: one arm inside on the liner, the other under the sole, ' +
				'between studs.',
			'Take it under the middle of the heel and under the ball, each three times.',
			'Lastwright takes one from the other: that is the offset.',
		],
		drawing: (
			<Drawing
				says={
					'A boot from the side: the thickness of the sole under the heel and under the ' + 'ball'
				}
			>
				<path {...ink} d={upper} />
				<path {...ink} d={soleSide} />
				<Span from={[48, 84]} to={[48, 104]} says="heel stack" at={[48, 120]} />
				<Span from={[162, 84]} to={[162, 97]} says="forefoot stack" at={[162, 114]} />
			</Drawing>
		),
	},
	{
		title: 'Studs: places, height, shape',
		steps: [
			'Lay the boot sole up. Stretch a thread from the middle of the heel to the tip: this is ' +
				'the middle line.',
			'For each stud measure from the inside of the heel forwards to its centre, and from the ' +
				'thread sideways. Towards the inner edge is negative.',
			'Type millimetres with the unit (182 mm, -35 mm): they are turned into fractions of the ' +
				'first size, so that every size of the model is covered.',
			'Height from the plate to the tip. Round, blade or oval. Say whether it comes out.',
		],
		drawing: (
			<Drawing
				says={
					'A sole from above with studs: each is measured forwards from the heel and ' +
					'sideways from the middle line'
				}
			>
				<path {...ink} d={soleTop} />
				<path {...ink} strokeDasharray="4 3" d="M 20 60 L 222 60" />
				{studPlaces.map(stud)}
				<Span from={[20, 104]} to={[168, 104]} says="from the heel" at={[94, 118]} />
				<Span from={[168, 58]} to={[168, 38]} says="" at={[0, 0]} />
				<text x="176" y="14" fontSize="11" textAnchor="middle" fill="currentColor">
					from the middle
				</text>
			</Drawing>
		),
	},
	{
		title: 'Bend, twist, counter, upper',
		steps: [
			'Forefoot bend: hold the heel down, push the toe up with the thumb. Bends easily at the ' +
				'ball: flexible. Needs both hands: stiff.',
			'Midfoot twist: hold heel and forefoot and wring the boot. Hardly turns: stiff.',
			'Heel counter: press it from behind with the thumb. Gives at once: soft. Does not give: ' +
				'firm. None: nothing to press.',
			'Upper: press it over the ball. Compare with a boot you call medium; judge all models by ' +
				'the same hand.',
		],
		drawing: (
			<Drawing
				says={
					'A boot from the side, its toe pushed up: it should fold where the foot folds, ' +
					'at the ball'
				}
			>
				<path
					{...ink}
					d={
						'M 22 84 L 20 44 Q 26 32 42 36 L 84 40 Q 118 56 150 58 Q 190 52 214 48 L ' +
						'218 52 Q 190 76 150 86 L 22 86 Z'
					}
				/>
				<path {...ink} d="M 20 86 L 150 86 Q 196 74 222 52 L 224 60 Q 200 90 150 98 L 24 100 Z" />
				<path
					{...strong}
					d="M 150 104 L 150 116 M 228 72 Q 238 52 228 32 M 228 32 L 224 40 M 228 32 L 236 38"
				/>
				<text x="118" y="118" fontSize="11" textAnchor="middle" fill="currentColor">
					at the ball
				</text>
			</Drawing>
		),
	},
]
export function Guide() {
	return (
		<Stack spacing={2}>
			<Box
				sx={{
					display: 'grid',
					gridTemplateColumns: { xs: '1fr', md: '1fr 1fr' },
					columnGap: 4,
					rowGap: 3,
				}}
			>
				{parts.map(({ title, steps, drawing }) => (
					<Panel key={title} title={title}>
						{drawing}
						<Box component="ol" sx={{ m: 0, pl: 2.5 }}>
							{steps.map((step) => (
								<Typography component="li" key={step} sx={{ mb: 0.5 }}>
									{step}
								</Typography>
							))}
						</Box>
					</Panel>
				))}
			</Box>
			<Typography color="text.secondary">
				Also: mass of one shoe without insert, in grams, of the size you name in the note; whether
				the liner comes out, and its thickness at the ball; the price you were told.
			</Typography>
		</Stack>
	)
}
