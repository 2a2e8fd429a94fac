package haywright.app.words;

import haywright.quantity.Unit;
import haywright.season.WinterBook.Alternative;
import haywright.season.kept.KeptBook;
import haywright.season.kept.KeptPlan;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What a winter book has somebody do now, in the same order on every page: a test that may make purchases needless comes before
 * them, and nothing is to be bought while it is not known whether a test is.
 *
 * @param what in a sentence. @param more behind it. @param under orders that stand under it. @param isTest whether a sample is to
 *     be planned for it
 */
public record DoNow(String what, String more, List<String> under, boolean isTest) {
    private static final String TEST = "test";
    private static final double DAYS_A_WEEK = 7;
    /** Less is a bag, which is not worth a line. */
    private static final double LEAST_KG = 25;

    public DoNow {
        under = List.copyOf(under);
    }

    private DoNow(String what, String more, List<String> under) {
        this(what, more, under, false);
    }

    /** @param book null while it is made */
    public static List<DoNow> of(KeptPlan plan, @Nullable KeptBook book) {
        var orders = WinterWords.buy(plan);
        if (book == null) {
            return orders.isEmpty() && plan.waiting().isEmpty()
                    ? List.of()
                    : List.of(new DoNow("Still figuring what pays. Buy nothing yet.", "", List.of()));
        }
        var all = new ArrayList<DoNow>();
        if (isTestFirst(book)) {
            test(plan, book, orders, all);
        } else {
            best(book)
                    .ifPresent(one -> all.add(new DoNow(
                            one.what() + ".",
                            "Decide by %s: it %s a winter, and feed lasts in %s."
                                    .formatted(
                                            Show.day(one.decideBy()),
                                            WinterWords.worth(one),
                                            WinterWords.of20(one.lasts())),
                            List.of())));
            orders.forEach(order -> all.add(new DoNow(order, "", List.of())));
        }
        return all;
    }

    private static void test(KeptPlan plan, KeptBook book, List<String> orders, List<DoNow> all) {
        var test = priced(book);
        all.add(new DoNow(
                (test.isPresent()
                                ? "Test the %s for nitrate before you buy anything."
                                : "Test the %s before you buy anything.")
                        .formatted(names(plan)),
                test.map(one -> "Do it by %s. If they come back safe, it %s a winter and the feed lasts in %s."
                                .formatted(
                                        Show.day(one.decideBy()),
                                        WinterWords.worth(one),
                                        Math.round(one.lasts()) == 20 ? "all 20" : WinterWords.of20(one.lasts())))
                        .orElse("What the test is worth was not figured."),
                List.of(),
                true));
        if (!orders.isEmpty()) {
            var by = test.map(Alternative::decideBy).orElse(book.day().plusDays((long) DAYS_A_WEEK));
            all.add(new DoNow(
                    "Wait for the results until %s.".formatted(Show.day(by)), until(plan, book, by), List.of()));
            all.add(new DoNow(
                    "If a test comes back unsafe, or none is back by %s:".formatted(Show.day(by)),
                    "",
                    orders.stream()
                            .map(order -> order.replaceFirst(" this week:", " then:"))
                            .toList()));
        }
    }

    /** What is fed of feeds to buy until then, at this week's rations. */
    private static String until(KeptPlan plan, KeptBook book, LocalDate by) {
        long days = ChronoUnit.DAYS.between(book.day(), by);
        var needs = plan.buys().stream()
                .map(KeptPlan.Buy::feed)
                .distinct()
                .map(feed -> {
                    double kg = days
                            * plan.rations().stream()
                                    .flatMap(ration -> ration.portions().stream()
                                            .filter(portion -> portion.feed().equals(feed))
                                            .map(portion -> ration.head() * portion.kg()))
                                    .mapToDouble(one -> one)
                                    .sum();
                    return kg < LEAST_KG ? "" : amount(kg) + " " + name(plan, feed);
                })
                .filter(says -> !says.isEmpty())
                .collect(Collectors.joining(", "));
        return needs.isEmpty() ? "" : "Until then this week’s rations take %s. Buy no more than that.".formatted(needs);
    }

    private static String amount(double kg) {
        double tons = Unit.TON.fromBase(kg);
        return Show.withUnit(Show.number(tons, tons < 10 ? 1 : 0), Unit.TON);
    }

    private static String name(KeptPlan plan, String feed) {
        return plan.buys().stream()
                .filter(buy -> buy.feed().equals(feed))
                .map(KeptPlan.Buy::name)
                .findFirst()
                .orElse("");
    }

    /** The first of it, short: {@code test Oat hay before you buy}, {@code buy 40 tons of Alfalfa this week}. */
    public static Optional<String> next(KeptBook book) {
        if (isTestFirst(book)) {
            return Optional.of("test %s before you buy".formatted(names(book.plan())));
        }
        return of(book.plan(), book).stream()
                .findFirst()
                .map(first -> first.what().replaceAll("(: |[.]( |$)).*", ""))
                .map(line -> Character.toLowerCase(line.charAt(0)) + line.substring(1));
    }

    /** Where nobody figured what a test is worth it costs less than any feed, and may take the place of it. */
    private static boolean isTestFirst(KeptBook book) {
        return priced(book)
                .map(one -> one.low() > 0)
                .orElse(book.alternatives().isEmpty() && !book.plan().waiting().isEmpty());
    }

    private static Optional<Alternative> priced(KeptBook book) {
        return book.alternatives().stream().filter(one -> one.id().equals(TEST)).findFirst();
    }

    /** The best of what could be done, where it brings something beyond chance. */
    private static Optional<Alternative> best(KeptBook book) {
        return book.alternatives().stream()
                .filter(one ->
                        one.low() > 0 && !one.id().contains("+") && !one.id().equals(TEST))
                .findFirst();
    }

    private static String names(KeptPlan plan) {
        return plan.waiting().stream().map(KeptPlan.Lot::name).collect(Collectors.joining(" and "));
    }
}
