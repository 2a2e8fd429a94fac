package haywright.app.web.herd;

import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.HerdWords;
import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.outlook.BackCast;
import haywright.quantity.Unit;
import haywright.ranch.Settings;
import haywright.workings.Refused;
import java.util.Optional;

/** Last winter beside what the equations say it took, before any advice; and whether the difference is to count. */
public final class BackCastPages {
    /** kg a day below which a part would be shown as 0.0 lb. */
    public static final double LEAST_KG = Unit.POUND.toBase(0.05);

    private static final String PATH = "herd/last-winter";

    private BackCastPages() {}

    static void routes(Routes on) {
        on.get(PATH, page -> page.show("haywright/app/web/herd/lastWinter.jte", view(page)));
        on.post(PATH, BackCastPages::accept);
        on.post(PATH + "/forget", BackCastPages::forget);
    }

    /**
     * @param says the two side by side, in a sentence; or what is missing
     * @param cast empty where something is missing
     * @param offer what could be counted from now on; empty where nothing can
     */
    public record View(String says, Optional<BackCast> cast, String offer) {}

    static View view(Page page) {
        Optional<BackCast> cast;
        try {
            cast = BackCast.of(page.ranch(), page.today());
        } catch (Refused refused) {
            return new View(
                    "Last winter can’t be figured: " + refused.problems().get(0).sentence(), Optional.empty(), "");
        }
        if (page.ranch().settings().weather() == null) {
            return new View(
                    "Enter where the ranch is first: last winter’s need depends on its cold.", Optional.empty(), "");
        }
        return cast.map(one -> view(page.ranch().settings(), one))
                .orElse(new View(
                        Measures.say(
                                "Enter last winter’s head, days and {tons}, and the turnout date: the best check on these figures."),
                        Optional.empty(),
                        ""));
    }

    private static View view(Settings settings, BackCast cast) {
        var factor = cast.factor();
        return new View(
                "You fed %s of hay per head per day. Free choice they would take %s to %s. %s"
                        .formatted(
                                Show.pounds(cast.fed()),
                                Show.pounds(cast.needed()),
                                Show.pounds(cast.mostNeeded()),
                                parted(cast)),
                Optional.of(cast),
                factor.isEmpty() ? "" : offer(settings, cast, factor.getAsDouble()));
    }

    private static String parted(BackCast cast) {
        double percent = 100 * (cast.ratio() - 1);
        return cast.agrees()
                ? "They agree."
                : "That is %s %% %s."
                        .formatted(
                                Show.number(Math.abs(percent), 0),
                                percent > 0 ? "more than they eat" : "less than they eat");
    }

    /** Empty where that is accepted already. */
    static String offer(Settings settings, BackCast cast, double factor) {
        double times = rounded(factor);
        if (settings.herdFactor() != null && settings.herdFactor() == times) {
            return "This is used now.";
        }
        double cold = tenth(Unit.POUND.fromBase(cast.hay().forMaintenance(cast.cold())));
        double left = tenth(100 * cast.left());
        double counted = tenth(100 * cast.left(times));
        boolean bounded = Math.abs(counted - times * left) > 0.1;
        return ("Last winter comes out right with cold and waste counted %s times. Cold: %s × %s = %s lb per head per day."
                        + " Waste: %s = %s lb for each 100 lb eaten, %s %% of the hay put out instead of %s."
                        + " They would then have taken %s, as you fed.")
                .formatted(
                        HerdWords.times(times),
                        Show.number(cold, 1),
                        HerdWords.times(times),
                        Show.number(tenth(times * cold), 1),
                        bounded
                                ? "from %s to its limit".formatted(Show.number(left, 1))
                                : "%s × %s".formatted(Show.number(left, 1), HerdWords.times(times)),
                        Show.number(bounded ? counted : tenth(times * left), 1),
                        Show.number(settings.withHerdFactor(times).hayLossPercent(), 0),
                        Show.significant(settings.feedingLossPercent(), 3),
                        Show.pounds(cast.counted(times)));
    }

    private static double tenth(double value) {
        return Math.round(10 * value) / 10.0;
    }

    private static double rounded(double factor) {
        return Math.round(100 * factor) / 100.0;
    }

    private static void accept(Page page) {
        var factor = BackCast.of(page.ranch(), page.today()).map(BackCast::factor);
        if (factor.isEmpty() || factor.get().isEmpty()) {
            throw new Refused(
                    "herdFactor",
                    "",
                    "last winter gives nothing to go by",
                    Measures.say("Check its head, days and {tons}, and the turnout date."));
        }
        double times = rounded(factor.get().getAsDouble());
        page.save(
                page.posted(PATH),
                "Cold and waste counted %s times, by last winter".formatted(HerdWords.times(times)),
                ranch -> ranch.with(ranch.settings().withHerdFactor(times)),
                PATH);
    }

    private static void forget(Page page) {
        page.save(
                page.posted(PATH + "/forget"),
                "Cold and waste by the equations",
                ranch -> ranch.with(ranch.settings().withHerdFactor(null)),
                PATH);
    }
}
