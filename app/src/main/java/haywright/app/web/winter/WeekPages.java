package haywright.app.web.winter;

import haywright.app.report.WagonCard;
import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.KeptBooks;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.app.words.WeekWords;
import haywright.cattle.herd.Group;
import haywright.outlook.LotTons;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FedWeek;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.sampling.stock.Stock;
import haywright.season.week.WeekMoves;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A week as it was: typed by lot, or from the boxes of a wagon card; then the book is made again from there. */
public final class WeekPages {
    public static final Ask FROM = Ask.date("from", "First day", "");
    public static final Ask TO = Ask.date("to", "Last day", "Count and score on the evening of this day.");

    /** What a phone gives back. */
    public static final Ask LINE = WeekPhone.LINE;

    private static final String KEY = "winter/week";
    private static final String LINE_KEY = KEY + "/line";
    private static final String PAGE = "haywright/app/web/winter/week.jte";
    private static final int DAYS = 7;
    /** What a week calls a figure, and the box that it was typed in. */
    private static final Map<String, String> BOXES = Map.of(
            "fed", "fed-",
            "counted", "left-on-hand-",
            "left", "refused-",
            "scored", "score-");

    private final Books books;

    WeekPages(Books books) {
        this.books = books;
    }

    void routes(Routes on) {
        on.get(KEY, page -> page.show(PAGE, view(page, page.form(KEY, () -> usual(page)))));
        on.post(KEY, this::keep);
        on.get(KEY + "/phone.html", page -> {
            var phone = phone(page);
            page.phoneFile(phone.fileName(), phone.file());
        });
        on.postBeside(LINE_KEY, WeekPages::line);
    }

    /**
     * @param line of the box that a phone's line goes into
     * @param isFromPhone whether such a line has just filled in the form
     * @param gone boxes with something in them, by the name of what is no longer on the ranch
     * @param kept weeks entered so far, the newest first, in words
     * @param early until when the next week is not over yet; empty where it is
     */
    public record View(
            Form form,
            Form line,
            boolean isFromPhone,
            Map<Ask, String> gone,
            List<LotBoxes> lots,
            List<GroupBoxes> groups,
            List<String> kept,
            String early) {}

    private static WeekPhone phone(Page page) {
        return new WeekPhone(page, lots(page.ranch()).toList());
    }

    /** Fills in the form; whoever reads it saves it. */
    private static void line(Page page) {
        var form = page.posted(LINE_KEY);
        var boxes = phone(page).read(form);
        if (boxes.isEmpty()) {
            page.http().status(422); // the phone has it still, so it is left nowhere else
            page.show(PAGE, view(page, page.form(KEY, () -> usual(page)), form, false));
            return;
        }
        page.desk().store().drafts().clear(page.ranch().id(), LINE_KEY); // it is in the boxes now
        page.show(PAGE, view(page, Form.of(KEY, boxes.get()), Form.of(LINE_KEY, Map.of()), true));
    }

    /** The boxes of a lot. @param now what is on hand */
    public record LotBoxes(String name, String now, Ask fed, Ask left, Ask refused) {}

    /** The boxes of a group. */
    public record GroupBoxes(String name, Ask score, Ask card) {}

    private static Map<String, String> usual(Page page) {
        var today = page.today();
        var last = page.ranch().weeks().values().stream().map(FedWeek::to).max(Comparator.naturalOrder());
        var from = last.map(day -> day.plusDays(1)).orElse(today.minusDays(DAYS - 1));
        // a week that has only begun ends when it is over, and not before it began
        var to = from.isAfter(today) || from.plusDays(DAYS - 1).isBefore(today) ? from.plusDays(DAYS - 1) : today;
        return Map.of(FROM.name(), Show.date(from), TO.name(), Show.date(to));
    }

    private static View view(Page page, Form form) {
        return view(page, form, page.form(LINE_KEY, Map::of), false);
    }

    private static View view(Page page, Form form, Form line, boolean isFromPhone) {
        var ranch = page.ranch();
        return new View(
                form,
                line,
                isFromPhone,
                new WeekSince(page, form).gone(),
                lots(ranch).map(WeekPages::boxes).toList(),
                ranch.groups().values().stream().map(WeekPages::boxes).toList(),
                ranch.weeks().values().stream()
                        .sorted(Comparator.comparing(FedWeek::to).reversed())
                        .map(week -> WeekWords.span(week) + ": " + WeekWords.said(week, ranch))
                        .toList(),
                ranch.weeks().values().stream()
                        .map(FedWeek::to)
                        .max(Comparator.naturalOrder())
                        .filter(last -> !last.isBefore(page.today()))
                        .map(last -> "The weeks up to %s are entered. The next begins %s: enter it once it is fed."
                                .formatted(Show.day(last), Show.day(last.plusDays(1))))
                        .orElse(""));
    }

    static Stream<Lot> lots(Ranch ranch) {
        return ranch.lots().values().stream().filter(lot -> !(lot.stock() instanceof Stock.Standing));
    }

    static LotBoxes boxes(Lot lot) {
        int bales = lot.stock().bales();
        var kg = LotTons.of(lot).kg();
        var now = kg.isEmpty()
                ? Measures.tons() + " not known"
                : WeekPages.tons(kg.getAsDouble()) + (bales > 0 ? ", " + Show.count(bales, "bale") : "");
        return new LotBoxes(
                lot.name(),
                now,
                amount(lot, "fed", "Fed"),
                amount(lot, "left-on-hand", "Left"),
                Ask.amount("refused-" + lot.id(), "Not eaten", Unit.PERCENT, ""));
    }

    private static String tons(double kg) {
        return Show.tons(kg);
    }

    /** In bales where it is baled; tons or pounds may be typed with their unit. */
    private static Ask amount(Lot lot, String what, String label) {
        return lot.stock().bales() > 0
                ? new Ask(what + "-" + lot.id(), label + ", bales", Unit.NONE, "", 9)
                : Ask.amount(what + "-" + lot.id(), label, Unit.TON, "");
    }

    static GroupBoxes boxes(Group group) {
        return new GroupBoxes(
                group.name(),
                Ask.number("score-" + group.id(), "Score", ""),
                Ask.text("card-" + group.id(), "Pounds each day", ""));
    }

    private void keep(Page page) {
        var form = page.posted(KEY);
        var week = read(page, form);
        var moves = week.map(one -> new WeekMoves(page.yard(), one, planned(page, one.days())));
        moves.ifPresent(one -> ask(form, one, page));
        if (moves.isEmpty() || form.hasProblems()) {
            page.reject(form, PAGE, view(page, form));
            return;
        }
        var moved = moves.get().moved();
        var entered =
                Objects.requireNonNull(moved.weeks().get(week.orElseThrow().id()));
        page.anew(); // what is left of a lot follows from the weeks: this one goes on top of those entered meanwhile
        page.save(
                form,
                "Week entered, %s: %s".formatted(WeekWords.span(entered), WeekWords.said(entered, page.ranch())),
                ranch -> moved,
                "winter");
        var opened = page.desk().store().ranches().open(page.ranch().id());
        if (opened.ranch().weeks().containsKey(entered.id())) {
            books.begin(page, opened.ranch(), opened.rev());
        }
    }

    /** kg by feed of the newest book's rations, or of the wagon cards where there is none. */
    private static Map<UUID, Double> planned(Page page, int days) {
        var aDay = KeptBooks.newest(page.desk(), page.ranch())
                .map(kept -> kept.book().plan().aDay())
                .orElseGet(() -> ofCards(page));
        var ranch = page.ranch();
        return Stream.concat(ranch.lots().keySet().stream(), ranch.feedsForSale().keySet().stream())
                .filter(id -> aDay.containsKey(id.toString()))
                .collect(Collectors.toMap(id -> id, id -> days * aDay.getOrDefault(id.toString(), 0.0)));
    }

    private static Map<String, Double> ofCards(Page page) {
        var all = new LinkedHashMap<String, Double>();
        for (var group : page.ranch().groups().values()) {
            try {
                new WagonCard(page.offers(group)).aDayKg().forEach((feed, kg) -> all.merge(feed, kg, Double::sum));
            } catch (Refused e) {
                // without a card nothing is planned for this group
            }
        }
        return all;
    }

    /** Both ways of saying it may be of two groups, or the same pounds twice. */
    private static Set<UUID> askBoth(Form form, WeekMoves moves, Page page) {
        var both = new HashSet<UUID>();
        var ofCards = new LinkedHashMap<UUID, Quantity>();
        page.ranch()
                .groups()
                .values()
                .forEach(group -> card(page, form, group, boxes(group).card(), ofCards));
        lots(page.ranch()).forEach(lot -> {
            var fed = moves.week().fed().get(lot.id());
            var card = ofCards.get(lot.id());
            double typed = fed == null || card == null ? 0 : fed.base() - card.base();
            if (card != null && typed > 1) {
                form.doubt(
                        boxes(lot).fed(),
                        "both-fed-" + lot.id(),
                        WeekWords.asksBoth(
                                lot.name(), typed, card.base(), moves.planned().getOrDefault(lot.id(), 0.0)));
                both.add(lot.id());
            }
        });
        return both;
    }

    private static void ask(Form form, WeekMoves moves, Page page) {
        var both = askBoth(form, moves, page);
        for (var one : moves.asks()) {
            if (one.kind() == WeekMoves.Kind.FAR_FROM_PLAN && both.contains(one.of())) {
                continue; // the question before has what was planned too
            }
            var name = switch (one.kind()) {
                case FED_MORE_THAN_THERE, FAR_FROM_PLAN -> "fed-" + one.of();
                case COUNT_APART -> "left-on-hand-" + one.of();
                case SCORE_APART -> "score-" + one.of();
                case NO_MEAL -> TO.name();
            };
            form.doubt(
                    Ask.text(name, "", ""),
                    one.kind().name().toLowerCase(java.util.Locale.ROOT) + "-" + name,
                    WeekWords.asks(one, page.ranch()));
        }
    }

    /** Without a year a day is the last such one, or one of the week that has just begun. */
    private static LocalDate aYearBackAndNext(Page page) {
        return page.today().minusYears(1).plusDays(DAYS + 1L);
    }

    private static Optional<FedWeek> read(Page page, Form form) {
        var ranch = page.ranch();
        var from = form.date(FROM, "Enter the first day.", aYearBackAndNext(page));
        var to = form.date(TO, "Enter the last day.", aYearBackAndNext(page));
        boolean areDays = !form.hasProblems();
        new WeekSince(page, form).refuse();
        Map<UUID, Quantity> fed = new LinkedHashMap<>();
        Map<UUID, Quantity> counted = new LinkedHashMap<>();
        Map<UUID, Double> refused = new LinkedHashMap<>();
        lots(ranch).forEach(lot -> {
            var boxes = boxes(lot);
            mass(form, boxes.fed(), lot).ifPresent(mass -> fed.put(lot.id(), mass));
            mass(form, boxes.left(), lot).ifPresent(mass -> counted.put(lot.id(), mass));
            var left = form.maybeNumber(boxes.refused());
            if (left != null) {
                refused.put(lot.id(), left);
            }
        });
        Map<UUID, Double> scored = new LinkedHashMap<>();
        for (var group : ranch.groups().values()) {
            var boxes = boxes(group);
            var score = form.maybeNumber(boxes.score());
            if (score != null) {
                scored.put(group.id(), score);
            }
            card(page, form, group, boxes.card(), fed);
        }
        fed.values().removeIf(mass -> mass.value() == 0);
        // the days may be wrong, and what stands in the boxes is judged all the same: everything is said at once
        boolean isRead = !form.hasProblems();
        if (areDays) {
            days(page, form, from, to);
        }
        try {
            var first = areDays ? from : page.today();
            var last = areDays ? to : page.today();
            var week = new FedWeek(UUID.randomUUID(), first, last, fed, counted, refused, scored, Map.of(), Map.of());
            return form.hasProblems() ? Optional.empty() : Optional.of(week);
        } catch (Refused wrong) {
            wrong.problems().stream()
                    .filter(one -> isRead || !one.field().equals("fed"))
                    .map(one -> inItsBox(form, one))
                    .forEach(one -> form.refuse(one.field(), one.value(), one.rule(), one.fix()));
            return Optional.empty();
        }
    }

    /** A week speaks of tons and of ids; whoever typed it, of a box and of what is in it. */
    private static Problem inItsBox(Form form, Problem problem) {
        var of = problem.field().split("/", 2);
        var box = of.length == 2 ? BOXES.getOrDefault(of[0], "") + of[1] : problem.field();
        return new Problem(
                box, form.value(box).isBlank() ? problem.value() : form.value(box), problem.rule(), problem.fix());
    }

    private static void days(Page page, Form form, LocalDate from, LocalDate to) {
        if (to.isAfter(page.today())) {
            form.refuse(TO.name(), form.value(TO), "a record is of days gone by", "Enter a day up to today.");
        }
        page.ranch().weeks().values().stream()
                .filter(week -> !week.to().isBefore(from) && !week.from().isAfter(to))
                .max(Comparator.comparing(FedWeek::to))
                .ifPresent(week -> form.refuse(
                        FROM.name(),
                        form.value(FROM),
                        WeekWords.span(week) + " is entered already",
                        "Begin on " + Show.day(week.to().plusDays(1)) + ", or undo that week on the history page."));
    }

    private static Optional<Quantity> mass(Form form, Ask ask, Lot lot) {
        var typed = ask.unit() == Unit.NONE ? form.maybeCountOr(Measures.mass(), ask) : form.maybeQuantity(ask);
        if (typed == null || typed.unit() != Unit.NONE) {
            return Optional.ofNullable(typed);
        }
        var each = LotTons.baleKg(lot);
        if (each.isEmpty()) {
            form.refuse(
                    ask.name(),
                    form.value(ask),
                    "nobody said what a bale weighs",
                    Measures.say("Enter it in {tons} or pounds."));
            return Optional.empty();
        }
        return Optional.of(Quantity.of(Unit.TON.fromBase(typed.value() * each.getAsDouble()), Unit.TON));
    }

    /** The pounds of a card go to the feeds that it loads. */
    private static void card(Page page, Form form, Group group, Ask ask, Map<UUID, Quantity> fed) {
        var figures = form.numbers(ask);
        if (figures.isEmpty()) {
            return;
        }
        var shares = shares(page, group);
        if (shares.isEmpty()) {
            form.refuse(
                    ask.name(),
                    form.value(ask),
                    "this group has no wagon card",
                    "Enter what was fed of each lot instead.");
            return;
        }
        double pounds = figures.stream().mapToDouble(f -> f).sum();
        shares.forEach((feed, share) -> fed.merge(
                feed,
                Quantity.of(Unit.TON.fromBase(Unit.POUND.toBase(pounds * share)), Unit.TON),
                (a, b) -> Quantity.of(a.in(Unit.TON) + b.in(Unit.TON), Unit.TON)));
    }

    private static Map<UUID, Double> shares(Page page, Group group) {
        try {
            return new WagonCard(page.offers(group)).shares();
        } catch (Refused e) {
            return Map.of();
        }
    }
}
