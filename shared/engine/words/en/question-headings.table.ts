/** What the groups of warning-sign questions are called, by their key in the screening. */
export const questionHeadings: Readonly<Record<string, string>> = {
	injury: 'Injury: Ottawa ankle and foot rules',
	wells: 'Clot: what goes into the letter',
	boneStress: 'Bone stress',
	achilles: 'Achilles rupture',
	syndesmosis: 'High ankle sprain',
	lisfranc: 'Midfoot joints',
	infection: 'Infection',
	limp: 'Limp',
	tumour: 'Bone pain or lump',
	neurological: 'Nerves',
	vascular: 'Blood supply',
	diabeticFoot: 'Diabetes: foot risk',
	lowEnergy: 'Low energy availability',
	inflammatory: 'Inflammatory joints',
}
