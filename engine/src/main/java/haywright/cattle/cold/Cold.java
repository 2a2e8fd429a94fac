package haywright.cattle.cold;

import haywright.workings.Worked;

/** What one animal needs for the cold of a day, over what last month has taught its body. */
public sealed interface Cold extends Worked permits ColdByRule, ColdByBalance, HerdCold, MeanCold {
    /** Mcal of NEm a day. */
    double nem();
}
