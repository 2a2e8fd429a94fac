package haywright.app.web.trail;

import haywright.app.words.NumberWords;
import haywright.app.words.Show;
import haywright.ranch.Ranch;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a step waits for, as one would say it to whoever does it.
 *
 * @param says a sentence: {@code Two stacks need sampling.}
 * @param act the same as an order, for a button: {@code Sample two stacks}
 * @param path of the page under the ranch
 */
public record ToDo(Step step, String says, String act, String path) {
    private static final int SMALL = 99;

    /**
     * Every step that is not done, in walking order.
     *
     * @param hasBook whether its winter book is of the ranch as it is
     */
    public static List<ToDo> of(Ranch ranch, boolean hasBook) {
        var all = new ArrayList<ToDo>();
        for (var stop : Trail.waiting(Trail.of(ranch, hasBook))) {
            if (stop.step() == Step.BENCH) {
                toBuy(ranch).ifPresent(all::add);
            }
            all.add(of(ranch, stop));
        }
        return List.copyOf(all);
    }

    /** Without a feed to buy, a ration can only be of what is there, and the winter book buys nothing. */
    private static Optional<ToDo> toBuy(Ranch ranch) {
        return !ranch.feedsForSale().isEmpty() || Trail.Lack.of(ranch) != Trail.Lack.NOTHING
                ? Optional.empty()
                : Optional.of(new ToDo(
                        Step.LOTS, "List the grain, cake or hay you could buy.", "Add feeds to buy", "feeds/new"));
    }

    private static ToDo of(Ranch ranch, Trail.Stop stop) {
        var step = stop.step();
        boolean bare = ranch.lots().isEmpty();
        boolean lacks = Trail.Lack.of(ranch) != Trail.Lack.NOTHING;
        return switch (step) {
            case LOTS -> with(step, "Add your hay: the first stack or pit.", "Add hay");
            case TAKE_IT -> bare ? with(step, "Add your hay first.", "Go to sampling") : sample(ranch, stop);
            case READ_IT ->
                bare
                        ? with(step, "Add your hay first.", "Go to lab reports")
                        : with(step, sentence(stop), "Enter lab reports");
            case HERD -> with(step, "Add your first group of cattle.", "Add cattle");
            case MATCH -> with(step, first(ranch) + " to see which hay is for which.", "Match hay and cattle");
            case BENCH ->
                lacks
                        ? with(step, first(ranch) + " to get a ration.", "Go to rations")
                        : with(step, "See what to feed %s.".formatted(groups(ranch)), "What to feed");
            case WINTER_BOOK ->
                lacks
                        ? with(step, first(ranch) + " to see whether the feed lasts.", "Does the feed last?")
                        : ranch.settings().turnout() == null
                                ? new ToDo(step, "Enter the day they go to pasture.", "Enter turnout", "settings/ranch")
                                : with(step, "See whether the feed lasts.", "Does the feed last?");
            case LETTER ->
                with(
                        step,
                        ranch.letters().isEmpty()
                                ? "No feed letter is saved yet."
                                : "Feed letters: " + stop.says() + ".",
                        "Write feed letters");
        };
    }

    /** What to add before everything else goes by it. */
    private static String first(Ranch ranch) {
        return switch (Trail.Lack.of(ranch)) {
            case BOTH -> "Add hay and cattle";
            case CATTLE -> "Add cattle";
            case HAY, NOTHING -> "Add hay";
        };
    }

    private static ToDo with(Step step, String says, String act) {
        return new ToDo(step, says, act, step.path());
    }

    private static ToDo sample(Ranch ranch, Trail.Stop stop) {
        var lots = Trail.toSample(ranch);
        if (lots.isEmpty()) {
            return with(Step.TAKE_IT, sentence(stop), "Enter what was sampled");
        }
        var what = lots.stream().allMatch(lot -> lot.feedClass().isForage()) ? "stack" : "feed";
        var many = lots.size() == 1 ? "one " + what : "%s %ss".formatted(number(lots.size()), what);
        return with(
                Step.TAKE_IT,
                "%s %s sampling.".formatted(Show.capital(many), lots.size() == 1 ? "needs" : "need"),
                "Sample " + many);
    }

    private static String groups(Ranch ranch) {
        int groups = ranch.groups().size();
        return groups == 1 ? "your cattle" : "each of your %s groups".formatted(number(groups));
    }

    private static String number(int number) {
        return number <= SMALL ? NumberWords.of(number) : Show.number(number, 0);
    }

    private static String sentence(Trail.Stop stop) {
        return Show.capital(stop.says()) + ".";
    }
}
