/** Trade terms in plain words: for the clinic in `words`; for a player, where the term must stand on a page, in `player`. */
interface GlossaryTerm {
	term: string
	words: string
	/** How the term may read on a page, and what it is, after 'Insert:'. */
	player?: { forms: readonly string[]; words: string }
}
export const glossary: readonly GlossaryTerm[] = [
	{ term: 'Apophysitis', words: 'Pain where a tendon pulls on the growing end of a bone, such as the heel of a growing player.' },
	{
		term: 'Ball',
		words: 'The widest part of the forefoot, at the joints where the toes begin.',
		player: { forms: ['ball of the foot', 'at the ball', 'around the ball'], words: 'the wide front part of the foot, where the toes begin.' },
	},
	{ term: 'Basis', words: 'What a finding rests on: the numbers put in, the rule, the threshold, its source and how strong that source is.' },
	{ term: 'Beighton score', words: 'Nine points for joints that move further than usual.' },
	{ term: 'Centile', words: 'The share of people of the same age and sex who lie below this value.' },
	{
		term: 'Clinician',
		words: 'Who examines the player, decides and signs.',
		player: { forms: ['clinician'], words: 'the person who checked your feet.' },
	},
	{ term: 'End feel', words: 'What stops a movement at its end: a stretch, a pinch or a hard stop.' },
	{ term: 'First MTP', words: 'The joint at the root of the big toe.' },
	{ term: 'First ray', words: 'The big toe with the long bone behind it.' },
	{ term: 'Fitting', words: 'The width of a shoe for its length, by letters.' },
	{ term: 'Foot posture index', words: 'Six items of the standing foot, each from -2 to 2, added up.' },
	{ term: 'Goniometer', words: 'Two arms with a scale that read the angle of a joint.' },
	{
		term: 'Growth plate',
		words: 'The part at the end of a young bone from which it grows.',
		player: { forms: ['growth plate', 'growth plates'], words: 'the soft end of a young bone, where it grows.' },
	},
	{ term: 'Heel counter', words: 'The stiff cup of a shoe round the heel.' },
	{
		term: 'Heel raise',
		words: 'A wedge under the heel, in mm.',
		player: { forms: ['heel raise', 'heel raises'], words: 'a thin wedge that goes under your heel, inside the shoe.' },
	},
	{ term: 'Inclinometer', words: 'A device that reads its tilt to the vertical.' },
	{
		term: 'Insert',
		words: 'What is laid into the shoe: its elements are decided one by one.',
		player: { forms: ['insert', 'inserts'], words: 'a shaped sole that you put in your shoe.' },
	},
	{ term: 'Inside length', words: 'The length of the room inside the shoe. Labels differ between makers; this does not.' },
	{ term: 'Last', words: 'The form a shoe is built on.' },
	{
		term: 'Ligament',
		words: 'The band that holds two bones of a joint together.',
		player: { forms: ['ligament', 'ligaments'], words: 'a strong band that ties two bones together.' },
	},
	{
		term: 'Liner',
		words: 'The loose layer on which the foot stands in the shoe.',
		player: { forms: ['liner', 'liners'], words: 'the loose sole inside a boot. You can take it out.' },
	},
	{ term: 'Lunge', words: 'Knee forward over the standing foot with the heel down.' },
	{ term: 'Maturity offset', words: 'Estimated years before or after the time of fastest growth. An estimate with a large error.' },
	{ term: 'Model', words: 'Footwear on the shelf, as opposed to a pair the player owns.' },
	{ term: 'Navicular', words: 'The bone at the top of the inner arch.' },
	{
		term: 'Nerve',
		words: 'What carries feeling to the brain and orders to a muscle.',
		player: { forms: ['nerve', 'nerves'], words: 'it lets you feel and move.' },
	},
	{ term: 'Offset', words: 'How much higher the heel stands than the forefoot in a shoe, in mm.' },
	{ term: 'Pair', words: 'Footwear that the player owns.' },
	{ term: 'Protocol', words: 'All thresholds in force, with their sources. The clinic can set its own.' },
	{ term: 'Real change', words: 'A change larger than the published error of the measure. A smaller one may be measuring error.' },
	{ term: 'Repeats', words: 'The same measure taken again; the mean stands for the side.' },
	{
		term: 'Scan',
		words: 'A picture of bones and joints: X-ray, MRI, CT or ultrasound.',
		player: { forms: ['scan', 'scans'], words: 'a picture of the inside of your body.' },
	},
	{ term: 'Sign', words: 'To freeze visit, decisions and report. A correction is a new version.' },
	{
		term: 'Stress fracture',
		words: 'A crack in a bone from load that came faster than the bone could mend.',
		player: { forms: ['stress fracture', 'stress fractures'], words: 'a fine crack in a bone. It comes from too much load.' },
	},
	{
		term: 'Tendon',
		words: 'The cord by which a muscle pulls on a bone.',
		player: { forms: ['tendon', 'tendons'], words: 'the cord that ties a muscle to a bone.' },
	},
	{ term: 'Toe room', words: 'Room in front of the longest toe inside the shoe.' },
]
