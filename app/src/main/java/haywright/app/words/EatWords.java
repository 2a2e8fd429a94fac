package haywright.app.words;

import haywright.quantity.Unit;
import haywright.season.given.Emergency;
import haywright.season.kept.KeptBook;
import haywright.season.kept.KeptPlan;
import haywright.season.kept.WinterStory;
import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;

/** Who eats which lot in which weeks, and what it costs by month. */
public final class EatWords {
    private static final double LEAST_TONS = 0.1;
    /** Days from now before which a change of lot is not "keep it for later". */
    private static final int SOON = 14;

    private static final int MOST_KEPT = 2;
    /** Less rounds to nothing. */
    private static final double LEAST_DOLLARS = 50;

    private EatWords() {}

    /** A group through the winter. @param path in one sentence. @param rows a stretch each */
    public record OfGroup(UUID group, String name, String path, List<Row> rows) {}

    /** @param weeks {@code Dec 1 to Jan 4}. @param feeds {@code 24 tons Meadow hay, 2 tons Cake} */
    public record Row(String weeks, String feeds) {}

    /** @param mean dollars for feed in the winters played. @param most of any of them */
    public record Month(String name, double mean, double most) {}

    /** The main hay or silage of a group from a day on. */
    private record Main(String lot, String name, LocalDate from, LocalDate to) {}

    /** Every group of the plan. */
    public static List<OfGroup> of(KeptPlan plan) {
        return plan.rations().stream()
                .map(ration -> new OfGroup(
                        ration.group(), ration.name(), path(plan, ration.group()), rows(plan, ration.group())))
                .filter(group -> !group.rows().isEmpty())
                .toList();
    }

    private static List<Row> rows(KeptPlan plan, UUID group) {
        var rows = new ArrayList<Row>();
        for (var stretch : plan.stretches()) {
            var feeds = stretch.eats().stream()
                    .filter(eats -> eats.group().equals(group) && Unit.POUND.fromBase(eats.kg()) >= 1)
                    .sorted(Comparator.comparingDouble(KeptPlan.Eats::kg).reversed())
                    .map(eats -> tons(eats.kg()) + " " + eats.name())
                    .collect(Collectors.joining(", "));
            if (!feeds.isEmpty()) {
                rows.add(new Row(span(stretch), feeds));
            }
        }
        return rows;
    }

    private static String tons(double kg) {
        double tons = Unit.TON.fromBase(kg);
        if (tons < LEAST_TONS) {
            return Show.withUnit(Show.number(Unit.POUND.fromBase(kg), 0), Unit.POUND);
        }
        return Show.withUnit(Show.number(tons, tons < 10 ? 1 : 0), Unit.TON);
    }

    private static String span(KeptPlan.Stretch stretch) {
        return Show.day(stretch.from()) + " to " + Show.day(stretch.to().minusDays(1));
    }

    private static List<Main> mains(KeptPlan plan, UUID group) {
        var all = new ArrayList<Main>();
        for (var stretch : plan.stretches()) {
            stretch.eats().stream()
                    .filter(eats -> eats.group().equals(group) && eats.isForage())
                    .max(Comparator.comparingDouble(KeptPlan.Eats::kg))
                    .ifPresent(eats -> {
                        int last = all.size() - 1;
                        if (last >= 0 && all.get(last).lot().equals(eats.feed())) {
                            var before = all.remove(last);
                            all.add(new Main(before.lot(), before.name(), before.from(), stretch.to()));
                        } else {
                            all.add(new Main(eats.feed(), eats.name(), stretch.from(), stretch.to()));
                        }
                    });
        }
        return all;
    }

    /** {@code Meadow hay to Feb 8, then Pivot hay}. */
    private static String path(KeptPlan plan, UUID group) {
        var mains = mains(plan, group);
        var says = new ArrayList<String>();
        for (int i = 0; i < mains.size(); i++) {
            var main = mains.get(i);
            says.add(main.name()
                    + (i + 1 < mains.size() ? " to " + Show.day(main.to().minusDays(1)) : ""));
        }
        return (says.isEmpty() ? "no hay" : String.join(", then ", says)) + found(plan, group);
    }

    /** {@code , with 104 tons of Emergency hay from Mar 9 on}: hay that nobody has is never left out. */
    private static String found(KeptPlan plan, UUID group) {
        double kg = 0;
        LocalDate from = null;
        for (var stretch : plan.stretches()) {
            for (var eats : stretch.eats()) {
                if (eats.group().equals(group) && eats.feed().equals(Emergency.ID)) {
                    kg += eats.kg();
                    from = from == null ? stretch.from() : from;
                }
            }
        }
        return from == null || Unit.TON.fromBase(kg) < 1
                ? ""
                : ", with %s of Emergency hay from %s on".formatted(tons(kg), Show.day(from));
    }

    /**
     * What the plan says of the lots, above the chart: {@code Meadow hay for Cows to Mar 29, Bulls to turnout. Keep Second cutting for Heifers
     * from Mar 2. Buy 38 tons of Alfalfa this week.}
     */
    public static String keep(KeptBook book) {
        var says = new ArrayList<>(List.of(keep(book.plan(), book.day(), book.grass())));
        DoNow.next(book).ifPresent(order -> says.add(Show.capital(order) + "."));
        return String.join(" ", says);
    }

    /** The same of a plan alone, before any winter is played. */
    public static String keep(KeptPlan plan, LocalDate day, LocalDate grass) {
        var byLot = new LinkedHashMap<String, List<String>>();
        for (var ration : plan.rations()) {
            mains(plan, ration.group()).stream()
                    .findFirst()
                    .ifPresent(main -> byLot.computeIfAbsent(main.name(), lot -> new ArrayList<>())
                            .add("%s to %s"
                                    .formatted(
                                            brief(ration.name()),
                                            main.to().isBefore(grass)
                                                    ? Show.day(main.to().minusDays(1))
                                                    : "turnout")));
        }
        var says = new ArrayList<String>();
        byLot.forEach((lot, groups) -> says.add("%s for %s.".formatted(lot, String.join(", ", groups))));
        int fed = says.size();
        for (var ration : plan.rations()) {
            var mains = mains(plan, ration.group());
            for (int i = 1; i < mains.size() && says.size() < fed + MOST_KEPT; i++) {
                var main = mains.get(i);
                boolean own = plan.lots().stream().anyMatch(lot -> lot.feed().equals(main.lot()));
                if (own && main.from().isAfter(day.plusDays(SOON))) {
                    says.add("Keep %s for %s from %s."
                            .formatted(main.name(), brief(ration.name()), Show.day(main.from())));
                    break;
                }
            }
        }
        return String.join(" ", says);
    }

    /** Without what stands in brackets behind it: the chart below has the whole name. */
    private static String brief(String group) {
        return group.replaceAll("(?<=.)\\s*\\(.*\\)$", "");
    }

    /** What a spreadsheet takes: a line a stretch, group and feed. */
    public static String csv(KeptPlan plan) {
        var text = new StringBuilder("from,to,group,feed,tons_as_fed\n");
        for (var stretch : plan.stretches()) {
            for (var eats : stretch.eats()) {
                text.append("%s,%s,%s,%s,%s%n"
                        .formatted(
                                stretch.from(),
                                stretch.to().minusDays(1),
                                quoted(eats.groupName()),
                                quoted(eats.name()),
                                Math.round(Unit.TON.fromBase(eats.kg()) * 1000) / 1000.0));
            }
        }
        return text.toString();
    }

    /** As RFC 4180 has it; what a spreadsheet would take for a formula begins with an apostrophe. */
    private static String quoted(String words) {
        var safe = words.matches("(?s)[=+@\\t\\r-].*") ? "'" + words : words;
        return "\"" + safe.replace("\"", "\"\"") + "\"";
    }

    /** Dollars for feed by month, over the winters of the record. */
    public static List<Month> months(KeptBook book) {
        if (book.winters().isEmpty()) {
            return List.of();
        }
        var sums = new TreeMap<LocalDate, Double>();
        var most = new TreeMap<LocalDate, Double>();
        for (var winter : book.winters()) {
            byMonth(book, winter).forEach((month, dollars) -> {
                sums.merge(month, dollars / book.winters().size(), Double::sum);
                most.merge(month, dollars, Math::max);
            });
        }
        return sums.entrySet().stream()
                .map(one -> new Month(
                        one.getKey().getMonth().getDisplayName(TextStyle.FULL, Locale.US),
                        one.getValue(),
                        most.getOrDefault(one.getKey(), 0.0)))
                .filter(month -> month.mean() >= LEAST_DOLLARS)
                .toList();
    }

    private static Map<LocalDate, Double> byMonth(KeptBook book, WinterStory winter) {
        var dollars = new TreeMap<LocalDate, Double>();
        for (int week = 0; week < winter.dollars().size(); week++) {
            var day = book.day().plusWeeks(week).withDayOfMonth(1);
            dollars.merge(day, winter.dollars().get(week), Double::sum);
        }
        return dollars;
    }
}
