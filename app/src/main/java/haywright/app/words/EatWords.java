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
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;

/** Who eats which lot in which weeks, and what it costs by month. */
public final class EatWords {
    private static final double LEAST_TONS = 0.1;
    /** Days from now before which a change of lot is not "keep it for later". */
    private static final int SOON = 14;

    private static final int MOST_KEPT = 2;
    /** Of all they eat as fed: less, such as a mineral, is not named. */
    private static final double LEAST_SHARE = 0.05;

    /** Less rounds to nothing. */
    private static final double LEAST_DOLLARS = 50;

    private EatWords() {}

    /** A group through the winter. @param path in one sentence. @param rows a stretch each */
    public record OfGroup(UUID group, String name, String path, List<Row> rows) {}

    /** @param weeks {@code Dec 1 to Jan 4}. @param feeds {@code 24 tons Meadow hay, 2 tons Cake} */
    public record Row(String weeks, String feeds) {}

    /** @param mean dollars for feed in the winters played. @param most of any of them */
    public record Month(String name, double mean, double most) {}

    /** The feeds, those to buy too, that make up what a group eats from a day on, the most of it first. */
    private record Mains(List<KeptPlan.Eats> feeds, LocalDate from, LocalDate to) {
        Set<String> ids() {
            return feeds.stream().map(KeptPlan.Eats::feed).collect(Collectors.toSet());
        }

        String names(Set<String> onlyMixed) {
            return feeds.stream()
                    .map(eats -> name(eats) + (onlyMixed.contains(eats.feed()) ? " (only mixed)" : ""))
                    .collect(Collectors.collectingAndThen(
                            Collectors.toList(),
                            names -> names.size() < 2
                                    ? String.join("", names)
                                    : names.get(0) + " with " + String.join(" and ", names.subList(1, names.size()))));
        }
    }

    /** Every group of the plan. @param onlyMixed ids of lots that are not safe alone, which is said wherever one is named */
    public static List<OfGroup> of(KeptPlan plan, LocalDate grass, Set<String> onlyMixed) {
        return plan.rations().stream()
                .map(ration -> new OfGroup(
                        ration.group(),
                        ration.name(),
                        path(plan, ration.group(), grass, onlyMixed),
                        rows(plan, ration.group())))
                .filter(group -> !group.rows().isEmpty())
                .toList();
    }

    private static List<Row> rows(KeptPlan plan, UUID group) {
        var rows = new ArrayList<Row>();
        for (var stretch : plan.stretches()) {
            var feeds = stretch.eats().stream()
                    .filter(eats -> eats.group().equals(group) && Unit.POUND.fromBase(eats.kg()) >= 1)
                    .sorted(Comparator.comparingDouble(KeptPlan.Eats::kg).reversed())
                    .map(eats -> tons(eats.kg()) + " " + name(eats))
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
        double shown = Measures.ofTons(tons);
        return Show.withUnit(Show.number(shown, shown < 10 ? 1 : 0), Measures.mass());
    }

    private static String name(KeptPlan.Eats eats) {
        return isFound(eats) ? "hay still to find" : eats.name();
    }

    private static boolean isFound(KeptPlan.Eats eats) {
        return eats.feed().equals(Emergency.ID);
    }

    private static String span(KeptPlan.Stretch stretch) {
        return Show.day(stretch.from()) + " to " + Show.day(stretch.to().minusDays(1));
    }

    /** To turnout. Where the same lots make up what they eat it goes on: a little more or less of one is no change. */
    private static List<Mains> mains(KeptPlan plan, UUID group, LocalDate grass) {
        var all = new ArrayList<Mains>();
        for (var stretch : plan.stretches()) {
            if (!stretch.from().isBefore(grass)) {
                break;
            }
            var eaten = stretch.eats().stream()
                    .filter(eats -> eats.group().equals(group))
                    .sorted(Comparator.comparing((KeptPlan.Eats eats) -> isFound(eats))
                            .thenComparing(Comparator.comparingDouble(KeptPlan.Eats::kg)
                                    .reversed()))
                    .toList();
            double kg = eaten.stream().mapToDouble(KeptPlan.Eats::kg).sum();
            var now = new Mains(
                    eaten.stream().filter(eats -> eats.kg() >= LEAST_SHARE * kg).toList(),
                    stretch.from(),
                    stretch.to());
            int last = all.size() - 1;
            if (last >= 0 && all.get(last).ids().equals(now.ids())) {
                var before = all.remove(last);
                all.add(new Mains(before.feeds(), before.from(), stretch.to()));
            } else if (!now.feeds().isEmpty()) {
                all.add(now);
            }
        }
        return all;
    }

    private static String path(KeptPlan plan, UUID group, LocalDate grass, Set<String> onlyMixed) {
        var eaten = String.join(", then ", eaten(plan, group, grass, onlyMixed));
        return (eaten.isEmpty() ? "no hay" : eaten)
                + found(plan, List.of(group)).map(found -> ". " + found).orElse("");
    }

    /** {@code Meadow hay with Cake to Feb 8}, {@code Pivot hay}; empty where nothing is fed to turnout. */
    private static List<String> eaten(KeptPlan plan, UUID group, LocalDate grass, Set<String> onlyMixed) {
        var mains = mains(plan, group, grass);
        var says = new ArrayList<String>();
        for (int i = 0; i < mains.size(); i++) {
            var main = mains.get(i);
            says.add(main.names(onlyMixed)
                    + (i + 1 < mains.size() ? " to " + Show.day(main.to().minusDays(1)) : ""));
        }
        return says;
    }

    /** Groups that eat the same to turnout. @param eats a stretch each, in order */
    public record Same(String groups, List<String> eats) {}

    /** Who eats what to turnout, a line for all groups that eat the same. */
    public static List<Same> same(KeptPlan plan, LocalDate grass, Set<String> onlyMixed) {
        var byPath = new LinkedHashMap<List<String>, List<String>>();
        for (var ration : plan.rations()) {
            var eaten = eaten(plan, ration.group(), grass, onlyMixed);
            if (!eaten.isEmpty()) {
                byPath.computeIfAbsent(eaten, groups -> new ArrayList<>()).add(brief(ration.name()));
            }
        }
        return byPath.entrySet().stream()
                .map(one -> new Same(String.join(", ", one.getValue()), one.getKey()))
                .toList();
    }

    /** {@code 104 tons of hay still to find, planned from Mar 9 on}: hay that nobody has is never left out. */
    private static Optional<String> found(KeptPlan plan, List<UUID> groups) {
        double kg = 0;
        LocalDate from = null;
        for (var stretch : plan.stretches()) {
            for (var eats : stretch.eats()) {
                if (groups.contains(eats.group()) && eats.feed().equals(Emergency.ID)) {
                    kg += eats.kg();
                    from = from == null ? stretch.from() : from;
                }
            }
        }
        return from == null || Unit.TON.fromBase(kg) < 1
                ? Optional.empty()
                : Optional.of("%s of hay still to find, planned from %s on".formatted(tons(kg), Show.day(from)));
    }

    /**
     * What the plan says of the lots, above the chart: {@code Keep Second cutting for Heifers from Mar 2. Buy 38 tons of Alfalfa
     * this week.}
     */
    public static String keep(KeptBook book, Set<String> onlyMixed) {
        var plan = book.plan();
        var says = new ArrayList<>(kept(plan, book.day(), book.grass(), onlyMixed));
        WinterWords.find(plan, book).ifPresent(find -> {
            says.add(find);
            says.add(WinterWords.ofPlan(plan, book));
        });
        var planned = WinterWords.plannedFrom(book);
        if (!planned.isEmpty()) {
            says.add(WinterWords.couldStart(book));
            says.add(planned);
        }
        DoNow.next(book).ifPresent(order -> says.add("Next: " + order + "."));
        return says.stream().filter(one -> !one.isEmpty()).collect(Collectors.joining(" "));
    }

    /** The same of a plan alone, before any winter is played. */
    public static String keep(KeptPlan plan, LocalDate day, LocalDate grass, Set<String> onlyMixed) {
        var says = new ArrayList<>(kept(plan, day, grass, onlyMixed));
        found(plan, plan.rations().stream().map(KeptPlan.Ration::group).toList())
                .ifPresent(found -> says.add(found + "."));
        return String.join(" ", says);
    }

    private static List<String> kept(KeptPlan plan, LocalDate day, LocalDate grass, Set<String> onlyMixed) {
        return plan.lots().stream()
                .filter(KeptPlan.LotEnds::isForage)
                .flatMap(lot -> kept(plan, lot, day, grass, onlyMixed).stream())
                .limit(MOST_KEPT)
                .toList();
    }

    /** Of a lot that nobody is fed of for some weeks; what somebody eats now is kept for nobody. */
    private static Optional<String> kept(
            KeptPlan plan, KeptPlan.LotEnds lot, LocalDate day, LocalDate grass, Set<String> onlyMixed) {
        for (var stretch : plan.stretches()) {
            var eats = stretch.eats().stream()
                    .filter(one -> one.feed().equals(lot.feed()))
                    .toList();
            if (eats.isEmpty()) {
                continue;
            }
            return stretch.from().isAfter(day.plusDays(SOON)) && stretch.from().isBefore(grass)
                    ? Optional.of("Keep %s%s for %s from %s."
                            .formatted(
                                    lot.name(),
                                    onlyMixed.contains(lot.feed()) ? " (only mixed)" : "",
                                    eats.stream()
                                            .map(one -> brief(one.groupName()))
                                            .collect(Collectors.joining(", ")),
                                    Show.day(stretch.from())))
                    : Optional.empty();
        }
        return Optional.empty();
    }

    /** Without what stands in brackets behind it: the chart below has the whole name. */
    private static String brief(String group) {
        return group.replaceAll("(?<=.)\\s*\\(.*\\)$", "");
    }

    /** What a spreadsheet takes: a line a stretch, group and feed. */
    public static String csv(KeptPlan plan) {
        var text = new StringBuilder("from,to,group,feed,%s_as_fed\n".formatted(Measures.tons()));
        for (var stretch : plan.stretches()) {
            for (var eats : stretch.eats()) {
                text.append("%s,%s,%s,%s,%s%n"
                        .formatted(
                                stretch.from(),
                                stretch.to().minusDays(1),
                                quoted(eats.groupName()),
                                quoted(eats.name()),
                                Math.round(Measures.mass().fromBase(eats.kg()) * 1000) / 1000.0));
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
