package haywright.app.words;

import haywright.season.WinterBook;
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
 *     be planned for it. @param isShort whether hay is to be found for it or fewer cattle fed
 */
public record DoNow(String what, String more, List<String> under, boolean isTest, boolean isShort) {
    private static final String TEST = "test";
    private static final double DAYS_A_WEEK = 7;
    /** Less is a bag, which is not worth a line. */
    private static final double LEAST_KG = 25;

    public DoNow {
        under = List.copyOf(under);
    }

    private DoNow(String what, String more, List<String> under) {
        this(what, more, under, false, false);
    }

    /** @param book null while it is made */
    public static List<DoNow> of(KeptPlan plan, @Nullable KeptBook book) {
        var orders = WinterWords.buy(plan, null);
        var find = WinterWords.find(plan, book);
        if (book == null) {
            return orders.isEmpty() && find.isEmpty() && plan.waiting().isEmpty()
                    ? List.of()
                    : List.of(new DoNow("Still figuring what pays. Buy nothing yet.", "", List.of()));
        }
        var all = new ArrayList<DoNow>();
        if (isTestFirst(book)) {
            test(plan, book, find, all);
        } else {
            best(book)
                    .ifPresent(one -> all.add(new DoNow(
                            Measures.say(one.what()) + ".",
                            "Decide by %s: %s.".formatted(Show.day(one.decideBy()), brings(one, book)),
                            List.of())));
            orders.forEach(order -> all.add(new DoNow(order, "", List.of())));
            find.ifPresent(order -> all.add(new DoNow(order, rest(plan, book), List.of(), false, true)));
        }
        return all;
    }

    /** Where feed lasts in no winter all the same, tons short come first: dollars saved feed nobody. */
    private static String brings(Alternative one, KeptBook book) {
        var short_ = Show.count(Math.round(Measures.ofTons(one.tonsShort())), Measures.ton());
        var before = book.besides().isEmpty() ? null : book.besides().get(0).tonsShort();
        if (Math.round(one.lasts()) > 0) {
            return "it %s a winter, and feed lasts in %s"
                    .formatted(
                            WinterWords.worth(one),
                            Math.round(one.lasts()) == WinterBook.OF ? "all 20" : WinterWords.of20(one.lasts()));
        }
        return "you are still %s short on average%s. It %s a winter"
                .formatted(
                        short_,
                        before == null ? "" : ", %s without it".formatted(Show.number(Measures.ofTons(before), 0)),
                        WinterWords.worth(one));
    }

    private static void test(KeptPlan plan, KeptBook book, Optional<String> find, List<DoNow> all) {
        var test = priced(book);
        var by = test.map(Alternative::decideBy).orElse(book.day().plusDays((long) DAYS_A_WEEK));
        var parted = Parted.of(plan, test.map(Alternative::needed).orElse(List.of()));
        WinterWords.bought(parted.anyway(), null)
                .forEach(order -> all.add(new DoNow(order, "You need it whatever the test says.", List.of())));
        var safe = plan.waiting().size() == 1 ? "If it comes back safe" : "If they come back safe";
        all.add(new DoNow(
                (test.isPresent() ? "Test the %s for nitrate before you buy %s." : "Test the %s before you buy %s.")
                        .formatted(names(plan), parted.anyway().isEmpty() ? "anything" : "more"),
                test.map(one -> "Do it by %s. %s, %s.".formatted(Show.day(one.decideBy()), safe, brings(one, book)))
                        .orElse("What the test is worth was not figured."),
                List.of(),
                true,
                false));
        // hay that a safe test leaves to find is to be looked for now
        double left = test.map(Alternative::tonsShort).orElse(0.0);
        boolean isAnyway = left >= 1 && find.isPresent();
        if (isAnyway) {
            all.add(new DoNow(
                    "Look for hay now, or plan for fewer cattle.",
                    "Whatever the test says you need some: %s on average if it is safe, %s if it is not."
                                    .formatted(
                                            Show.count(Math.round(Measures.ofTons(left)), Measures.ton()),
                                            WinterWords.tons(WinterWords.toFind(plan, book)))
                            + " " + rest(plan, book),
                    List.of(),
                    false,
                    true));
        }
        var orders = new ArrayList<>(WinterWords.bought(parted.waits(), by));
        orders.addAll(WinterWords.sells(plan));
        if (!isAnyway) {
            find.map(order -> (order + " " + rest(plan, book)).strip()).ifPresent(orders::add);
        }
        if (!orders.isEmpty()) {
            all.add(new DoNow(
                    "Wait for the results until %s.".formatted(Show.day(by)),
                    until(plan, parted.anyway(), book, by),
                    List.of()));
            all.add(new DoNow(
                    "If a test comes back unsafe, or none is back by %s:".formatted(Show.day(by)),
                    "",
                    orders,
                    false,
                    !isAnyway && find.isPresent()));
        }
    }

    private static String rest(KeptPlan plan, KeptBook book) {
        return (WinterWords.fewer(plan, WinterWords.toFind(plan, book)) + " " + WinterWords.ofPlan(plan, book)).strip();
    }

    /** What is fed of feeds to buy until then, at this week's rations, beyond what is bought anyway. */
    private static String until(KeptPlan plan, List<KeptPlan.Buy> anyway, KeptBook book, LocalDate by) {
        long days = ChronoUnit.DAYS.between(book.day(), by);
        var needs = plan.buys().stream()
                .map(KeptPlan.Buy::feed)
                .distinct()
                .map(feed -> {
                    double kg = days * plan.aDay().getOrDefault(feed, 0.0)
                            - anyway.stream()
                                    .filter(buy -> buy.feed().equals(feed))
                                    .mapToDouble(KeptPlan.Buy::kg)
                                    .sum();
                    return kg < LEAST_KG ? "" : amount(kg) + " " + name(plan, feed);
                })
                .filter(says -> !says.isEmpty())
                .collect(Collectors.joining(", "));
        return needs.isEmpty() ? "" : "Until then this week’s rations take %s. Buy no more than that.".formatted(needs);
    }

    private static String amount(double kg) {
        double tons = Measures.mass().fromBase(kg);
        return Show.withUnit(Show.number(tons, tons < 10 ? 1 : 0), Measures.mass());
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
            return of(book.plan(), book).stream()
                    .findFirst()
                    .map(first -> first.isTest
                            ? "test %s before you buy".formatted(names(book.plan()))
                            : "%s, and test %s before you buy more".formatted(brief(first), names(book.plan())));
        }
        return of(book.plan(), book).stream().findFirst().map(DoNow::brief);
    }

    private static String brief(DoNow one) {
        var line = one.what().replaceAll("(: |[.]( |$)).*", "");
        return Character.toLowerCase(line.charAt(0)) + line.substring(1);
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
