package haywright.diet;

/** How much grain mature cattle may be given, % of body weight, as put out where hay is short. */
public final class GrainFed {
    private GrainFed() {}

    /** In one feeding. */
    public static double percentAFeeding() {
        return PracticeLimits.value("L02");
    }

    /** @param feedings a day that grain is spread over */
    public static double percentADay(int feedings) {
        return Math.min(percentAFeeding() * feedings, PracticeLimits.value("L02d"));
    }
}
