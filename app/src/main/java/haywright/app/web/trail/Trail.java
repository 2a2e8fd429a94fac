package haywright.app.web.trail;

import haywright.app.words.MassWords;
import haywright.app.words.Show;
import haywright.forage.FeedClass;
import haywright.outlook.TestedFor;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;

/** What is done and what waits at each step, in words, told from the ranch document and whether it has a winter book. */
public final class Trail {
    private Trail() {}

    /** @param says one short line, no full stop */
    public record Stop(Step step, boolean done, String says) {}

    /** @param hasBook whether its winter book is of the ranch as it is */
    public static List<Stop> of(Ranch ranch, boolean hasBook) {
        var stops = new ArrayList<Stop>();
        for (var step : Step.values()) {
            stops.add(stop(step, ranch, hasBook));
        }
        return List.copyOf(stops);
    }

    /** Every stop that is not done. */
    public static List<Stop> waiting(List<Stop> trail) {
        return trail.stream().filter(stop -> !stop.done()).toList();
    }

    private static Stop stop(Step step, Ranch ranch, boolean hasBook) {
        return switch (step) {
            case LOTS -> lots(ranch);
            case READ_IT -> reports(ranch);
            case HERD -> herd(ranch);
            case BENCH -> withBoth(step, ranch, () -> bench(ranch));
            case LETTER -> letter(ranch);
            case TAKE_IT -> samples(ranch);
            case WINTER_BOOK -> withBoth(step, ranch, () -> winter(ranch, hasBook));
            case MATCH -> withBoth(step, ranch, () -> new Stop(step, true, "which lot for which cattle"));
        };
    }

    private static Stop lots(Ranch ranch) {
        if (ranch.lots().isEmpty()) {
            return new Stop(Step.LOTS, false, "add the first lot");
        }
        boolean hasStraw = ranch.lots().values().stream().anyMatch(lot -> lot.feedClass() == FeedClass.STRAW);
        return new Stop(
                Step.LOTS,
                true,
                "%s, %s in all%s"
                        .formatted(
                                Show.count(ranch.lots().size(), "lot"),
                                MassWords.onHand(ranch),
                                hasStraw ? ", straw too" : ""));
    }

    private static Stop samples(Ranch ranch) {
        if (ranch.lots().isEmpty()) {
            return new Stop(Step.TAKE_IT, false, "add a lot first");
        }
        long out = ranch.samplings().values().stream()
                .filter(s -> s.taken() == null)
                .count();
        if (out > 0) {
            return new Stop(Step.TAKE_IT, false, Show.count(out, "field sheet") + " not back yet");
        }
        int left = toSample(ranch).size();
        return left == 0
                ? new Stop(Step.TAKE_IT, true, "every lot sampled or tested")
                : new Stop(Step.TAKE_IT, false, Show.count(left, "lot") + " to sample");
    }

    private static Stop reports(Ranch ranch) {
        var untested = untested(ranch);
        if (ranch.lots().isEmpty()) {
            return new Stop(Step.READ_IT, false, "add a lot first");
        }
        if (untested.isEmpty()) {
            return new Stop(Step.READ_IT, true, "every lot has a report");
        }
        var lacks = TestedFor.of(ranch, untested.get(0)).lacks();
        boolean isReported = !ranch.reportsOn(untested.get(0).id()).isEmpty();
        return new Stop(
                Step.READ_IT,
                false,
                untested.size() == 1
                        ? untested.get(0).name() + (isReported ? " is not tested for " + lacks : " needs a report")
                        : "%d of %s need a report"
                                .formatted(
                                        untested.size(), Show.count(ranch.lots().size(), "lot")));
    }

    private static Stop herd(Ranch ranch) {
        return ranch.groups().isEmpty()
                ? new Stop(Step.HERD, false, "add the first group")
                : new Stop(
                        Step.HERD,
                        true,
                        "%s head in %s"
                                .formatted(
                                        Show.number(ranch.head(), 0),
                                        Show.count(ranch.groups().size(), "group")));
    }

    private static Stop bench(Ranch ranch) {
        return new Stop(Step.BENCH, false, Show.count(ranch.groups().size(), "group") + " to feed");
    }

    /** Of the two that every later step goes by, what a ranch has none of. */
    enum Lack {
        NOTHING,
        HAY,
        CATTLE,
        BOTH;

        static Lack of(Ranch ranch) {
            return ranch.lots().isEmpty()
                    ? ranch.groups().isEmpty() ? BOTH : HAY
                    : ranch.groups().isEmpty() ? CATTLE : NOTHING;
        }
    }

    /** Where a step waits for hay or cattle; else what {@code then} says of it. */
    private static Stop withBoth(Step step, Ranch ranch, Supplier<Stop> then) {
        return switch (Lack.of(ranch)) {
            case NOTHING -> then.get();
            case HAY -> new Stop(step, false, "waits for a lot");
            case CATTLE -> new Stop(step, false, "waits for a group");
            case BOTH -> new Stop(step, false, "waits for a lot and a group");
        };
    }

    private static Stop winter(Ranch ranch, boolean hasBook) {
        return ranch.settings().turnout() == null
                ? new Stop(Step.WINTER_BOOK, false, "enter the turnout date")
                : new Stop(Step.WINTER_BOOK, hasBook, "does the feed last?");
    }

    private static Stop letter(Ranch ranch) {
        int written = ranch.letters().size();
        return new Stop(
                Step.LETTER,
                written > 0 && written >= ranch.groups().size(),
                written == 0
                        ? "none written yet"
                        : "%d of %s written"
                                .formatted(written, Show.count(ranch.groups().size(), "letter")));
    }

    /** Lots with neither a report nor a sample on its way. */
    static List<Lot> toSample(Ranch ranch) {
        return ranch.lots().values().stream()
                .filter(lot -> needsSample(ranch, lot))
                .toList();
    }

    /** Whether a lot has neither a report nor a sample on its way. */
    public static boolean needsSample(Ranch ranch, Lot lot) {
        return !TestedFor.of(ranch, lot).isForFeeding()
                && ranch.samplingsOf(lot.id()).isEmpty()
                && ranch.reportsOn(lot.id()).isEmpty();
    }

    /** Lots whose reports, if any, do not carry what a ration starts from. */
    static List<Lot> untested(Ranch ranch) {
        return ranch.lots().values().stream()
                .filter(lot -> !TestedFor.of(ranch, lot).isForFeeding())
                .toList();
    }
}
