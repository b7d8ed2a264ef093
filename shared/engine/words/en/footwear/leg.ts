/** What the rules of the knee, the leg and the joints say. */
import { alsoTo, sentence } from '../../sentence.ts'

export const legSentences = {
	'footwear.acl': alsoTo(
		sentence({
			clinician: () =>
				'ACL injury, now or before: round studs and less grip in turning. High grip has been ' +
				'associated with about twice the lower-limb injuries.',
			player: () =>
				'You hurt a ligament in your knee, now or before. Wear round studs that let the foot turn.',
		}),
		'doctor',
	),
	'footwear.shin-knee': sentence({
		clinician: () => 'Shin or knee pain: cushioning for training, and studs that turn easily.',
		player: () => 'Train in cushioned shoes. Wear studs that turn easily.',
	}),
	'footwear.knee-wear': sentence({
		clinician: () => 'Knee osteoarthritis: cushioning for training and studs that turn easily.',
		player: () => 'Train in cushioned shoes, and wear studs that turn easily.',
	}),
	'footwear.leg-length': sentence({
		clinician: () => 'Leg-length difference: a liner that comes out leaves room for a raise.',
		player: () => 'One leg is longer. A liner that comes out leaves room for a raise.',
	}),
	'footwear.hypermobile': sentence({
		clinician: () => 'Very mobile joints: a steadier boot.',
		player: () => 'Your joints move a lot. A steady boot helps.',
	}),
}
