package haywright.app.compute.topic;

import haywright.app.compute.shape.Key;
import haywright.app.compute.topic.ForageTopics.On;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.lab.CheckedReport;
import haywright.forage.lab.Issue;
import haywright.forage.lab.Reading;
import haywright.forage.lab.ReportCheck;
import haywright.quantity.Unit;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** A laboratory's report carried to dry matter and held against itself, arithmetic and the feed book. */
public final class ReportTopic {
    private ReportTopic() {}

    static final Topic<In, Out> TOPIC = new Topic<>(
            "report-check",
            "Carries a laboratory's report to dry matter and says what is impossible or unusual in it.",
            In.class,
            Out.class,
            """
            {"feed_class":"alfalfa_hay","dm_pct":88,\
            "values":[{"analyte":"cp","value":18.5,"unit":"pct","basis":"dry_matter"}]}""",
            ReportTopic::check);

    record In(
            @Key(words = "A class of feed, or a feed of the book: legume_hay, alfalfa_hay.")
            String feedClass,

            @Key(value = Unit.PERCENT, name = "dm", words = "Of the feed as received.")
            OptionalDouble dryMatter,

            List<Printed> values) {
        In {
            if (values.isEmpty() && dryMatter.isEmpty()) {
                throw new Refused("values", "an empty list", "a report has at least one figure", "Add what it prints.");
            }
            if (dryMatter.isPresent() && values.stream().anyMatch(v -> v.analyte() == Analyte.DM)) {
                throw new Refused("dryMatter", "twice", "dry matter is given here and among the values", "Keep one.");
            }
        }
    }

    /** One figure as printed. */
    record Printed(
            @Key(name = "analyte", words = "Its id, its name or a synonym: cp, Crude protein.")
            String name,

            double value,

            @Key(words = "pct, g_per_kg, ppm, mcal_per_lb, …; none for ratios and indices.") @Nullable
            String unit,

            @Key(words = "Never assumed; none for figures that have one value only.") @Nullable
            On basis) {
        Printed {
            var problems = new ArrayList<Problem>();
            var analyte = Analyte.named(name);
            if (analyte.hasBasis() && basis == null) {
                problems.add(new Problem(
                        "basis",
                        "nothing",
                        analyte.words() + " has one value as received and another on dry matter",
                        "Say which column it stood in: as_received or dry_matter."));
            }
            if (unit == null ? analyte.unit() != Unit.NONE : !hasSuffix(unit)) {
                problems.add(new Problem(
                        "unit",
                        unit == null ? "nothing" : unit,
                        "a figure is read in the unit it was printed in",
                        "One of "
                                + analyte.accepts().stream().map(Unit::suffix).collect(Collectors.joining(", "))
                                + "."));
            }
            Refused.unlessEmpty(problems);
        }

        Analyte analyte() {
            return Analyte.named(name);
        }

        private static boolean hasSuffix(String unit) {
            return Arrays.stream(Unit.values()).anyMatch(u -> u.suffix().equals(unit));
        }

        Reading reading() {
            var printed = Arrays.stream(Unit.values())
                    .filter(u -> u.suffix().equals(unit == null ? "" : unit))
                    .findFirst()
                    .orElseThrow();
            return new Reading(analyte(), value, printed, basis == null ? Basis.DRY_MATTER : basis.basis());
        }
    }

    record Normal(Analyte analyte, double value, String unit, Basis basis) {}

    record Finding(String level, String rule, @Nullable Analyte field, String words, String fix) {
        static Finding of(Issue issue) {
            return new Finding(issue.level().name(), issue.rule(), issue.field(), issue.words(), issue.fix());
        }
    }

    record Out(List<Normal> values, List<Finding> issues) {}

    private static Answer<Out> check(In in) {
        var feed = FeedKind.named("feedClass", in.feedClass);
        var readings = new ArrayList<Reading>();
        in.dryMatter.ifPresent(dm -> readings.add(new Reading(Analyte.DM, dm, Unit.PERCENT, Basis.AS_RECEIVED)));
        in.values.forEach(printed -> readings.add(printed.reading()));
        return answer(ReportCheck.check(feed.feedClass(), feed.row(), readings));
    }

    public static Answer<Out> answer(CheckedReport checked) {
        var values = checked.values().entrySet().stream()
                .map(e -> new Normal(
                        e.getKey(),
                        e.getValue(),
                        e.getKey().unit().suffix(),
                        e.getKey() == Analyte.DM ? Basis.AS_RECEIVED : Basis.DRY_MATTER))
                .toList();
        return Answer.of(
                new Out(values, checked.issues().stream().map(Finding::of).toList()));
    }
}
