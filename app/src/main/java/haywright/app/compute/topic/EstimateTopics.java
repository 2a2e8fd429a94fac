package haywright.app.compute.topic;

import haywright.app.compute.shape.Key;
import haywright.forage.book.Prior;
import haywright.forage.energy.RelativeForageQuality;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.LabReport.HowSampled;
import haywright.forage.lab.Tested;
import haywright.forage.lot.Derived;
import haywright.forage.lot.LotEstimate;
import haywright.quantity.Unit;
import haywright.sampling.Design;
import haywright.workings.Caution;
import haywright.workings.Refused;
import haywright.workings.Source;
import java.util.List;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** What reports on a lot say together, and how far to trust it; and the index that takes fiber's digestibility in. */
final class EstimateTopics {
    private static final UUID NOBODYS = new UUID(0, 0);

    private EstimateTopics() {}

    static final List<Topic<?, ?>> ALL = List.of(
            new Topic<>(
                    "relative-forage-quality",
                    "How a hay ranks by digestible nutrients eaten, with the digestibility of its fiber in it.",
                    QualityIn.class,
                    QualityOut.class,
                    """
                    {"class":"legume","ndf_pct_dm":42,"ndicp_pct_dm":2.5,"cp_pct_dm":19,"fat_pct_dm":2.2,"ash_pct_dm":9.5,\
                    "ndfd48_pct_ndf":46}""",
                    EstimateTopics::quality),
            new Topic<>(
                    "lot-estimate",
                    "What a lot is made of and how far to trust it, from its kind and its reports.",
                    EstimateIn.class,
                    EstimateOut.class,
                    """
                    {"feed_class":"grass_hay","reports":[{"values":[\
                    {"analyte":"cp","value":11.2,"unit":"pct","basis":"dry_matter"},\
                    {"analyte":"adf","value":36.5,"unit":"pct","basis":"dry_matter"},\
                    {"analyte":"ndf","value":59,"unit":"pct","basis":"dry_matter"}],\
                    "sampled":"plan","units":20,"increments":1}]}""",
                    EstimateTopics::estimate));

    record QualityIn(
            @Key(name = "class", words = "legume, also with grass in it; or grass.")
            RelativeForageQuality.Stand stand,

            @Key(value = Unit.PERCENT, of = "dm", words = "For grass.")
            OptionalDouble adf,

            @Key(value = Unit.PERCENT, of = "dm") double ndf,

            @Key(value = Unit.PERCENT, of = "dm", words = "7 % of NDF where it is not given.")
            OptionalDouble ndicp,

            @Key(value = Unit.PERCENT, of = "dm") double cp,
            @Key(value = Unit.PERCENT, of = "dm") double fat,
            @Key(value = Unit.PERCENT, of = "dm") double ash,

            @Key(value = Unit.PERCENT, of = "ndf", name = "ndfd48", words = "Digested in 48 hours.")
            double ndfd) {}

    record QualityOut(
            @Key(value = Unit.PERCENT, of = "dm") double tdn,
            @Key(value = Unit.PERCENT, of = "bw") double dmi,
            double rfq) {}

    private static Answer<QualityOut> quality(QualityIn in) {
        var hay = new RelativeForageQuality(in.stand, in.adf, in.ndf, in.ndicp, in.cp, in.fat, in.ash, in.ndfd);
        var cautions = hay.inRange()
                ? List.<Caution>of()
                : List.of(new Caution(
                        "The intake of grass was fitted to CP 4 to 25, ADF 25 to 50 and TDN 40 to 70 %: take this figure as rough.",
                        Source.memory("Moore and Kunkle 1999, intake of grass")));
        return new Answer<>(new QualityOut(hay.tdn(), hay.intake(), hay.index()), true, List.of(hay), cautions);
    }

    record EstimateIn(
            @Key(
                    words =
                            "A class of feed, a feed of the book, or a kind of lot: grass_hay, alfalfa_hay, dormant_range.")
            String feedClass,

            @Key(words = "None for a lot that was never tested.")
            List<Report> reports,

            @Key(words = "Bales or loads in the lot, where they can be counted.") @Nullable
            Integer lotUnits,

            @Key(words = "Of the draws behind TDN, energy and feed value; 1 where it is not given.") @Nullable
            Integer seed) {}

    record Report(
            List<ReportTopic.Printed> values,
            @Key(words = "plan, grab or unknown.") HowSampled sampled,

            @Key(words = "Bales, loads or places taken from; for a plan.") @Nullable
            Integer units,

            @Key(words = "Cores from each; 1 where it is not given.") @Nullable
            Integer increments,

            @Key(words = "Its name: results of one laboratory share its bias.") @Nullable
            String laboratory,

            @Key(words = "wet, nir or unknown.") Tested.@Nullable Method method,

            @Key(words = "The code of the bag: results of one bag share the error of its sampling.") @Nullable
            String sample) {
        Report {
            if (sampled == HowSampled.PLAN && units == null) {
                throw new Refused(
                        "units",
                        "nothing",
                        "a plan covers the lot as far as it took from many places",
                        "From how many bales, loads or places?");
            }
        }

        private Tested tested(FeedKind feed, int lotUnits) {
            var readings = values.stream().map(ReportTopic.Printed::reading).toList();
            feed.sound(
                    analyte -> IntStream.range(0, readings.size())
                            .filter(i -> readings.get(i).analyte() == analyte)
                            .mapToObj(i -> "values[" + i + "].value")
                            .findFirst()
                            .orElse("values"),
                    "",
                    readings);
            var design = sampled == HowSampled.PLAN && units != null
                    ? Design.of(units, increments == null ? 1 : increments, 1)
                    : Tested.ONE_GRAB;
            var bag = sample == null ? "" : sample;
            var report = new LabReport(
                    NOBODYS,
                    NOBODYS,
                    laboratory == null ? "" : laboratory,
                    bag,
                    null,
                    null,
                    sampled,
                    readings,
                    List.of(),
                    method,
                    List.of());
            return Tested.of(feed.feedClass(), feed.row(), report, bag, design, lotUnits);
        }
    }

    record Known(
            String analyte,
            String unit,
            double mean,
            double sd,
            @Key(name = "low_90") double low,
            @Key(name = "high_90") double high,
            double median,
            double priorMean,
            double priorSd,
            double shareSampling,
            double shareLaboratory,
            double shareLot,
            int results,

            @Key(words = "How the kind's own figure is known.")
            String priorKnown) {
        private static Known of(LotEstimate.Estimate e) {
            return new Known(
                    e.analyte().id(),
                    e.analyte().unit().suffix(),
                    e.now().mean(),
                    e.now().standardDeviation(),
                    e.now().low90(),
                    e.now().high90(),
                    e.now().center(),
                    e.before().mean(),
                    e.before().standardDeviation(),
                    e.samplingShare(),
                    e.laboratoryShare(),
                    e.lotShare(),
                    e.measured(),
                    e.cell().mark());
        }
    }

    record Worth(
            String what,
            String unit,
            double mean,
            double sd,
            @Key(name = "low_90") double low,
            @Key(name = "high_90") double high,
            double equationSd) {
        private static Worth of(Derived d) {
            return new Worth(
                    d.analyte().id(),
                    d.analyte().unit().suffix(),
                    d.mean(),
                    d.sd(),
                    d.low90(),
                    d.high90(),
                    d.equationSd());
        }
    }

    record EstimateOut(
            @Key(words = "The kind of lot whose spread was taken.")
            String kind,

            List<Known> analytes,

            @Key(words = "By the equations of this program, never a laboratory's own figure.")
            List<Worth> derived,

            List<ReportTopic.Finding> issues,
            List<String> notes) {}

    private static Answer<EstimateOut> estimate(EstimateIn in) {
        var named = Prior.named(in.feedClass.strip().replace('-', '_'));
        var feed = named.isPresent()
                ? FeedKind.named("feedClass", named.get().feedClass().id())
                : FeedKind.named("feedClass", in.feedClass);
        var prior = named.or(() -> Prior.of(feed.feedClass(), feed.bookRow()))
                .orElseThrow(() -> new Refused(
                        "feedClass",
                        in.feedClass,
                        "how far lots of it differ is not known here",
                        "One of " + Prior.all().stream().map(Prior::id).collect(Collectors.joining(", ")) + "."));
        var tested =
                Sent.each("reports", in.reports, report -> report.tested(feed, in.lotUnits == null ? 0 : in.lotUnits));
        var estimate = LotEstimate.of(prior, tested);
        return Answer.of(
                new EstimateOut(
                        prior.id(),
                        estimate.estimates().stream().map(Known::of).toList(),
                        estimate.derived(in.seed == null ? 1 : in.seed).stream()
                                .map(Worth::of)
                                .toList(),
                        estimate.issues().stream().map(ReportTopic.Finding::of).toList(),
                        estimate.notes()),
                estimate.weighing());
    }
}
