ve Re -- gi -- "na a"4 __ ma -- ter, l’a -- _
