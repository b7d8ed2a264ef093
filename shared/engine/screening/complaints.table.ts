/** Questions unfold by complaint: what the screen asks everybody, and which groups each complaint opens. */
export interface Complaint {
	id: string
	/** What the player says, as a button. */
	says: string
	/** Visit paths of the groups or questions to open, in order. */
	opens: readonly string[]
}
/** Asked at every visit: together they take well under a minute. */
export const askedAlways: readonly string[] = ['screening.nightPain', 'screening.fever', 'screening.reducedSensation', 'screening.newWeakness', 'screening.breathlessOrChestPain', 'screening.cardiacOrConcussion', 'screening.lumpOrSwelling', 'screening.activeFootUlcer']

/** Asked at every visit too, where nobody else hears it: private, see visit/private.ts. What only women are asked stands in flags.table.ts. */
export const askedInPrivate: readonly string[] = ['screening.fluoroquinolone', 'screening.corticosteroidLongTerm', 'screening.corticosteroidInjection', 'screening.anticoagulant', 'screening.unintendedWeightLoss', 'screening.periodsAbsent', 'screening.pregnant']
/** Restricted free text: asked of nobody. */
export const restrictedNote = 'screening.safeguardingNote'
/** Answered once, by the general question; shown in its group only where an older visit holds it. */
export const askedElsewhere: readonly string[] = ['screening.injury.pregnant']

export const complaints: readonly Complaint[] = [
	{ id: 'twisted', says: 'Twisted or hurt the ankle or foot', opens: ['screening.injury', 'screening.syndesmosisSuspected', 'screening.syndesmosis', 'screening.lisfrancSuspected', 'screening.lisfranc'] },
	{ id: 'pop', says: 'Sudden pop or kick in the calf or heel cord', opens: ['screening.achillesRuptureSuspected', 'screening.achilles', 'screening.calfSuspicion'] },
	{ id: 'bone', says: 'One sore spot on a bone', opens: ['screening.boneStressHighRisk', 'screening.boneStressLowRisk', 'screening.boneStress', 'screening.lowEnergy'] },
	{ id: 'midfoot', says: 'Midfoot pain or bruise under the foot', opens: ['screening.lisfrancSuspected', 'screening.lisfranc', 'screening.boneStress'] },
	{ id: 'calf', says: 'Swollen or painful calf', opens: ['screening.calfSuspicion', 'screening.wells', 'screening.achilles', 'screening.vascular'] },
	{ id: 'hot', says: 'Hot, red or weeping', opens: ['screening.hotSwollenJoint', 'screening.spreadingInfection', 'screening.infection'] },
	{ id: 'limp', says: 'Limping without a known reason', opens: ['screening.hipPainWithLimp', 'screening.limpUnexplained', 'screening.limp', 'screening.tumour', 'screening.infection'] },
	{ id: 'lump', says: 'A lump, or bone pain without a reason', opens: ['screening.tumour', 'screening.boneStress'] },
	{ id: 'numb', says: 'Numb, tingling or weak', opens: ['screening.reducedSensation', 'screening.newWeakness', 'screening.neurological', 'screening.exertionalTightness'] },
	{ id: 'cold', says: 'Cold, pale or tight', opens: ['screening.coldPaleFoot', 'screening.exertionalTightness', 'screening.vascular'] },
	{ id: 'diabetes', says: 'Has diabetes', opens: ['screening.activeFootUlcer', 'screening.diabeticFoot', 'screening.neurological', 'screening.vascular'] },
	{ id: 'tired', says: 'Tired, or repeated stress fractures', opens: ['screening.lowEnergy'] },
	{ id: 'stiff', says: 'Stiff in the morning, or many joints', opens: ['screening.morningStiffness', 'screening.inflammatory'] },
	{ id: 'shape', says: 'Foot shape that is stiff, one-sided or new', opens: ['screening.rigidFlatFoot', 'screening.suddenLegLengthDifference', 'screening.neurological'] },
]
