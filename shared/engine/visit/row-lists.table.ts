/**
 * Lists of a draft whose items can be told apart, so that two who type in one list do not have to
 * go by places. A list that does not stand here is one value.
 */
export interface RowList {
	/** from the draft on; `*` stands for an item of a list */
	path: string
	/** keys that tell an item, the surest first; none: the item is its own name */
	by: readonly (readonly string[])[]
	/** its fields are typed one by one; else an item is one entry */
	inside?: true
}
export const rowLists: readonly RowList[] = [
	{ path: 'visit.conditions', by: [['condition', 'side'], ['condition']], inside: true },
	{ path: 'visit.footwear', by: [['id']], inside: true },
	{ path: 'visit.outcomes', by: [['rule', 'side']] },
	{ path: 'visit.coreSetAside', by: [['question']] },
	{ path: 'visit.play.surfaces', by: [] },
	{ path: 'visit.conditions.*.seek', by: [] },
	{ path: 'visit.conditions.*.avoid', by: [] },
	{ path: 'visit.footwear.*.roles', by: [] },
	{ path: 'visit.footwear.*.damage', by: [] },
	{ path: 'visit.insertWorn.left.places', by: [] },
	{ path: 'visit.insertWorn.right.places', by: [] },
	{ path: 'decisions.lines', by: [['findingId']] },
	{ path: 'decisions.answers', by: [['question']] },
	{ path: 'decisions.released', by: [['topic', 'to']] },
	{ path: 'decisions.screeningDone', by: [['side', 'items'], ['side']] },
	{ path: 'decisions.insert.left', by: [['element']] },
	{ path: 'decisions.insert.right', by: [['element']] },
	{
		path: 'typedTwice',
		by: [
			['path', 'at', 'is'],
			['path', 'at'],
		],
	},
]
/**
 * Groups that cannot be without one of their fields: who takes one out while another types into it
 * takes out nothing, as with an item of a list.
 */
export const heldTogether: readonly string[] = [
	'visit.screening.injury',
	'visit.screening.achilles',
	'visit.screening.boneStress',
	'visit.screening.infection',
	'visit.screening.limp',
	'visit.screening.lisfranc',
	'visit.screening.syndesmosis',
	'visit.screening.tumour',
	'visit.season',
	'visit.since',
	'visit.insertWorn',
	'decisions.heelRaiseMm',
]
