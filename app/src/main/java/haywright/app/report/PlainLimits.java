package haywright.app.report;

import haywright.app.words.Show;
import haywright.diet.DietRow;
import haywright.forage.Analyte;
import haywright.ration.HandMix;
import haywright.ration.LimitAnswer;
import haywright.ration.NoRation;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** The limits of a ration in the words of whoever feeds: what is short, what is in the way, what would help. */
final class PlainLimits {
    private static final int MOST = 3;

    private PlainLimits() {}

    /** What a mix lacks, and what of it there is too much of; a wish that is not kept is no lack. */
    private static Set<String> missed(HandMix mix, DietRow.Sense sense) {
        return mix.limits().stream()
                .filter(limit -> !limit.isMet()
                        && limit.row().kind() != DietRow.Kind.CHOICE
                        && limit.row().sense() == sense)
                .map(PlainLimits::plain)
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    /** Of what they get now: "They’re short on feed and mineral, and the corn silage isn’t tested."; empty when all is well. */
    static Optional<String> they(HandMix mix) {
        var little = missed(mix, DietRow.Sense.AT_LEAST).stream()
                .map(need -> need.equals("energy") ? "feed" : need)
                .distinct()
                .limit(MOST)
                .toList();
        var much = worst(missed(mix, DietRow.Sense.AT_MOST));
        var says = new ArrayList<String>();
        if (!little.isEmpty()) {
            says.add("they’re short on " + list(little));
        }
        if (!much.isEmpty()) {
            says.add("they get too much " + list(much));
        }
        mix.notAllowed()
                .forEach(out -> says.add(
                        out.feed().nitrateDanger() && !out.feed().composition().knows(Analyte.NO3N)
                                ? out.feed().name() + " isn’t tested"
                                : out.feed().name() + " may not be fed"));
        return says.isEmpty() ? Optional.empty() : Optional.of(Show.capital(String.join(", and ", says)) + ".");
    }

    /** What a mix lacks or has too much of: "short of energy and protein"; empty when nothing is wrong with it. */
    static Optional<String> shortOf(HandMix mix) {
        var little = missed(mix, DietRow.Sense.AT_LEAST);
        var much = missed(mix, DietRow.Sense.AT_MOST);
        var says = new ArrayList<String>();
        if (!little.isEmpty()) {
            says.add("short of " + list(worst(little)));
        }
        if (!much.isEmpty()) {
            says.add("too high in " + list(worst(much)));
        }
        if (!mix.notAllowed().isEmpty()) {
            says.add("not safe yet");
        }
        return says.isEmpty() ? Optional.empty() : Optional.of(String.join(" and ", says));
    }

    /** Nobody reads more than three; the rest stand on the bench. */
    private static List<String> worst(Collection<String> names) {
        return names.stream().limit(MOST).toList();
    }

    private static String plain(LimitAnswer limit) {
        return plain(limit.row().id(), limit.row().name());
    }

    private static String plain(String row, String name) {
        return switch (row) {
            case "nem", "nem_two_feedings", "growth" -> "energy";
            case "cp", "cp_floor", "mp", "mp_rumen" -> "protein";
            case "intake", "forage_floor", "forage_least", "eaten_least" -> "feed";
            case "fill", "eaten_most" -> "bulk";
            case "ca", "ca_p_low" -> "calcium";
            case "p", "ca_p_high" -> "phosphorus";
            case "forage" -> "hay or silage";
            case "nitrate" -> "nitrate";
            case "s" -> "sulfur";
            case "grain_careful" -> "grain";
            default -> name.replace(" in the ration", "");
        };
    }

    /** The smallest set that cannot be had together, in the feeder's words. */
    static String standsInTheWay(NoRation no) {
        if (no.diet().feeds().isEmpty()) {
            return "No feed here may be fed yet.";
        }
        var rows = new LinkedHashSet<String>();
        for (var conflict : no.conflicts()) {
            var row = conflict.row();
            var plain = plain(row.id(), row.name());
            boolean least = row.sense() == DietRow.Sense.AT_LEAST;
            if (row.kind() == DietRow.Kind.CHOICE) {
                rows.add((least ? "your wish to feed " : "your limit on ") + plain);
            } else if (row.id().equals("fill")) {
                rows.add("what they can hold");
            } else {
                rows.add((least ? "enough " : "the limit on ") + plain);
            }
        }
        return rows.size() == 1
                ? "The trouble is %s.".formatted(rows.iterator().next())
                : "These can't all hold: %s.".formatted(list(List.copyOf(rows)));
    }

    /** What would let a ration exist, the surest first. */
    static List<String> wouldHelp(NoRation no) {
        var help = new LinkedHashSet<String>();
        for (var out : no.diet().leftOut()) {
            if (!out.isByPractice()) {
                help.add((out.danger() ? "a nitrate test of " : "a test of ")
                        + out.feed().name());
            }
        }
        for (var lift : no.lifts()) {
            var row = lift.row();
            if (row.id().equals("growth")) {
                help.add("a slower gain");
            } else if (row.kind() == DietRow.Kind.CHOICE) {
                boolean less = row.sense() == DietRow.Sense.AT_LEAST;
                help.add(
                        less && lift.to() <= 0
                                ? "doing without " + row.name()
                                : (less ? "less " : "more ") + row.name());
            }
        }
        for (var conflict : no.conflicts()) {
            switch (conflict.row().id()) {
                case "growth", "nem", "nem_two_feedings" -> help.add("a feed with more energy");
                case "cp", "cp_floor", "mp", "mp_rumen" -> help.add("a feed with more protein");
                case "ca", "ca_p_low" -> help.add("a mineral with calcium");
                case "p", "ca_p_high" -> help.add("a mineral with phosphorus");
                default -> {}
            }
        }
        if (help.isEmpty()) {
            help.add("a talk with your adviser");
        }
        return List.copyOf(help);
    }

    /** "A, B and C"; names that have commas of their own are kept apart by semicolons. */
    static String list(List<String> names) {
        int last = names.size() - 1;
        var apart = names.stream().anyMatch(n -> n.contains(",")) ? "; " : ", ";
        var and = apart.equals("; ") ? "; and " : " and ";
        return last < 1 ? String.join("", names) : String.join(apart, names.subList(0, last)) + and + names.get(last);
    }
}
