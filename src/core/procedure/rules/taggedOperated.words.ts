export const en = {
  "ruleName.tagged-operated": "What carries a tag is not operated",
  "rule.tagged-operated": "{verb} on {name} while its tag is on",
  "rule.tagged-operated.help":
    "a tag comes off only when the people it stands for are clear and have released it: untag {name} first",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.tagged-operated": "Ce qui porte une étiquette ne se manœuvre pas",
  "rule.tagged-operated": "on manœuvre {name} ({verb}) alors que son étiquette y est",
  "rule.tagged-operated.help":
    "une étiquette ne s'ôte que lorsque ceux qu'elle protège sont dégagés et l'ont rendue : ôtez-la d'abord de {name}",
};
