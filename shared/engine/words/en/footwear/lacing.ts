/** What is said of ways to lace a boot. Trade practice only, no outcome data; wording of our own. */
import { sentence } from '../../sentence.ts'
import { nameOf } from './name.ts'

const bootLimits =
	'Boots have few holes; a lace cover or side lacing may rule it out. Check again with all that is ' +
	'worn inside; numbness means too tight.'
/** @param player what a player is told beyond what holds of every way to lace */
const limitsOf = (more = '', player?: string) =>
	sentence({
		clinician: () => `${bootLimits}${more}`,
		...(player === undefined ? {} : { player: () => player }),
	})
export const lacingSentences = {
	'work.heel-lock.name': nameOf('Heel lock'),
	'work.heel-lock': sentence({
		clinician: () =>
			'Holds the heel down: bring each lace up through the next hole on its own side to leave a ' +
			'loop there, cross the ends, pass each through the loop opposite, draw down and tie.',
		player: () =>
			'It holds your heel down. Put each lace through the next hole on its own side and leave a ' +
			'loop. Cross the ends. Pass each through the loop on the other side, pull down and tie.',
	}),
	'work.heel-lock.limits': limitsOf(
		' In boots leave no loop where the knot could meet the ball.',
		'Leave no loop where you strike the ball.',
	),
	'work.window.name': nameOf('Window over the instep', 'Gap over the top of the foot'),
	'work.window': sentence({
		clinician: () =>
			'Takes pressure off the top of the foot: cross below the sore place, run straight up each ' +
			'side past it, then cross again.',
		player: () =>
			'It takes pressure off the top of your foot. Cross the laces below the sore place. Run them ' +
			'straight up past it, then cross again.',
	}),
	'work.window.limits': limitsOf(),
	'work.forefoot-room.name': nameOf('Room at the forefoot', 'Room at the front'),
	'work.forefoot-room': sentence({
		clinician: () =>
			'Room for a broad forefoot: leave out the crossings of the lowest two rows (run the lace up ' +
			'each side), and cross from the third row on.',
		player: () =>
			'Run the lace up each side for the lowest two rows. Cross it from the third row on.',
	}),
	'work.forefoot-room.limits': limitsOf(),
	'work.toe-lift.name': nameOf('Toe lift'),
	'work.toe-lift': sentence({
		clinician: () =>
			'Lifts the toe box: one end runs from the lowest hole on the big-toe side straight across ' +
			'to the top hole of the other side; the other end ladders through the rest. Pulling the ' +
			'first end lifts the upper off the toe.',
		player: () =>
			'It lifts the boot off your toes. Start one end in the lowest hole at the big toe. Run it to ' +
			'the top hole of the other side. Lace the other end through the rest. Pull the first end.',
	}),
	'work.toe-lift.limits': limitsOf(
		' It does not make up for a boot that is short or shallow.',
		'It does not help in a boot that is too short.',
	),
	'work.parallel.name': nameOf('Parallel bars', 'Straight bars'),
	'work.parallel': sentence({
		clinician: () =>
			'Even and loose all over: straight bars across each row, the rise hidden along the sides.',
		player: () => 'Lace straight across each row, even and loose. Hide the way up along the sides.',
	}),
	'work.parallel.limits': limitsOf(),
	'work.two-zone.name': nameOf('Two laces'),
	'work.two-zone': sentence({
		clinician: () =>
			'Narrow heel and broad forefoot: one lace for the lower rows, left loose, and a second for ' +
			'the upper rows, drawn tight.',
		player: () =>
			'Use one lace for the lower rows and leave it loose. Use a second one for the upper rows ' +
			'and pull it tight.',
	}),
	'work.two-zone.limits': limitsOf(),
	'work.narrow-foot.name': nameOf('Drawn in for a narrow foot'),
	'work.narrow-foot': sentence({
		clinician: () =>
			'Draws the upper in: use the outermost holes where there are two rows, and tighten the ' +
			'middle rows first.',
		player: () =>
			'It pulls the boot in. If there are two rows of holes, use the outer ones. Pull the middle ' +
			'rows tight first.',
	}),
	'work.narrow-foot.limits': limitsOf(),
	'work.midfoot-lock.name': nameOf('Midfoot lock'),
	'work.midfoot-lock': sentence({
		clinician: () =>
			"Holds the midfoot: an extra turn of the knot (a surgeon's knot) at the third row, then " +
			'lace on.',
		player: () =>
			'It holds the middle of your foot. Give the laces one more turn at the third row. Then lace ' +
			'on.',
	}),
	'work.midfoot-lock.limits': limitsOf(),
}
