package haywright.app.compute.topic;

import haywright.app.compute.shape.Key;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.BasisConversion;
import haywright.forage.Moisture;
import haywright.forage.energy.EnergyLine;
import haywright.forage.energy.Fiber;
import haywright.forage.energy.LinearNetEnergy;
import haywright.forage.energy.NetEnergy;
import haywright.forage.energy.RelativeFeedValue;
import haywright.forage.hazard.AvailableProtein;
import haywright.forage.hazard.MineralBalance;
import haywright.forage.hazard.Nitrate;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** What a single figure of a laboratory's report means. */
final class ForageTopics {
    private ForageTopics() {}

    static final List<Topic<?, ?>> ALL = List.of(
            new Topic<>(
                    "basis",
                    "Carries a weight, a concentration or a price from one basis to another.",
                    BasisIn.class,
                    Value.class,
                    """
                    {"kind":"weight","value":25,"from":"dry_matter","to":"as_fed","moisture_pct":10}""",
                    ForageTopics::basis),
            new Topic<>(
                    "relative-feed-value",
                    "How a hay ranks by digestible dry matter eaten; full-bloom alfalfa is 100.",
                    FiberIn.class,
                    FeedValue.class,
                    """
                    {"adf_pct_dm":28,"ndf_pct_dm":35}""",
                    ForageTopics::relativeFeedValue),
            TdnTopic.TOPIC,
            new Topic<>(
                    "net-energy",
                    "Digestible, metabolizable and net energy from TDN.",
                    TdnTopic.Out.class,
                    Energy.class,
                    """
                    {"tdn_pct_dm":84.1}""",
                    ForageTopics::netEnergy),
            new Topic<>(
                    "available-protein",
                    "Crude protein less what heat has bound, by one of the two rules in use.",
                    ProteinIn.class,
                    ProteinOut.class,
                    """
                    {"cp_pct_dm":18,"adicp_pct_dm":3,"rule":"a"}""",
                    ForageTopics::availableProtein),
            new Topic<>(
                    "nitrate",
                    "Nitrate in its three forms, with what each published source says of it.",
                    NitrateIn.class,
                    NitrateOut.class,
                    """
                    {"value":0.5,"as":"no3","unit":"pct_dm"}""",
                    ForageTopics::nitrate),
            new Topic<>(
                    "mineral-balance",
                    "Tetany ratio and charge balance from the minerals that are given.",
                    MineralsIn.class,
                    MineralsOut.class,
                    """
                    {"k_pct_dm":2.5,"ca_pct_dm":0.5,"mg_pct_dm":0.2,"na_pct_dm":0.05,"cl_pct_dm":0.6,"s_pct_dm":0.2}""",
                    ForageTopics::mineralBalance));

    /** As fed and as received are two names of one thing. */
    enum On {
        AS_FED(Basis.AS_RECEIVED),
        AS_RECEIVED(Basis.AS_RECEIVED),
        DRY_MATTER(Basis.DRY_MATTER),
        NINETY_PCT(Basis.NINETY_PCT);

        private final Basis basis;

        On(Basis basis) {
            this.basis = basis;
        }

        Basis basis() {
            return basis;
        }
    }

    record BasisIn(
            BasisConversion.Of kind,
            double value,
            On from,
            On to,

            @Key(value = Unit.PERCENT, name = "dm", words = "Of the feed as fed.")
            OptionalDouble dryMatter,

            @Key(value = Unit.PERCENT, words = "Of the feed as fed; in place of dm.")
            OptionalDouble moisture) {
        BasisIn {
            if (!(value >= 0)) {
                throw new Refused(
                        "value",
                        String.valueOf(value),
                        "a weight, a share or a price is 0 or more",
                        "Check the figure.");
            }
            if (dryMatter.isPresent() && moisture.isPresent()) {
                throw new Refused(
                        "moisture",
                        "dry matter and moisture",
                        "one follows from the other, so both together can contradict",
                        "Keep one of them.");
            }
            boolean needed =
                    from.basis != to.basis && (from.basis == Basis.AS_RECEIVED || to.basis == Basis.AS_RECEIVED);
            if (needed && dryMatter.isEmpty() && moisture.isEmpty()) {
                throw new Refused(
                        "dryMatter",
                        "nothing",
                        "between as fed and another basis the dry matter decides",
                        "Add dm_pct or moisture_pct.");
            }
        }
    }

    record Value(double value) {}

    private static Answer<Value> basis(BasisIn in) {
        var workings = new ArrayList<Worked>();
        // Between dry matter and 90 % the feed's own dry matter plays no part; any possible one will do.
        double dryMatter = in.dryMatter.orElse(100);
        if (in.moisture.isPresent()) {
            var moisture = new Moisture(in.moisture.getAsDouble());
            workings.add(moisture);
            dryMatter = moisture.dryMatter();
        }
        var conversion = new BasisConversion(in.kind, in.value, Unit.NONE, in.from.basis, in.to.basis, dryMatter);
        workings.add(conversion);
        return new Answer<>(new Value(conversion.result()), true, workings, List.of());
    }

    record FiberIn(
            @Key(value = Unit.PERCENT, of = "dm") double adf,
            @Key(value = Unit.PERCENT, of = "dm") double ndf) {}

    record FeedValue(
            @Key(value = Unit.PERCENT, of = "dm") double ddm,
            @Key(value = Unit.PERCENT, of = "bw") double dmi,
            double rfv) {}

    private static Answer<FeedValue> relativeFeedValue(FiberIn in) {
        var hay = new RelativeFeedValue(new Fiber(in.adf, in.ndf));
        return Answer.of(new FeedValue(hay.digestibleDryMatter(), hay.intake(), hay.index()), hay);
    }

    record Energy(
            @Key(value = Unit.MCAL_PER_KG, of = "dm") double de,
            @Key(value = Unit.MCAL_PER_KG, of = "dm") double me,
            @Key(value = Unit.MCAL_PER_KG, of = "dm") double nem,
            @Key(value = Unit.MCAL_PER_KG, of = "dm") double neg) {}

    private static Answer<Energy> netEnergy(TdnTopic.Out in) {
        var energy = new NetEnergy(in.tdn());
        var workings = new ArrayList<Worked>(List.of(energy));
        for (var line : EnergyLine.published()) {
            if (line.from() == Analyte.TDN) {
                workings.add(new LinearNetEnergy(line, in.tdn())); // as laboratories print it
            }
        }
        return new Answer<>(
                new Energy(energy.de(), energy.me(), energy.nem(), energy.neg()), true, workings, energy.cautions());
    }

    record ProteinIn(
            @Key(value = Unit.PERCENT, of = "dm") double cp,
            @Key(value = Unit.PERCENT, of = "dm") double adicp,

            @Key(words = "a: stepped at 14 and 20 % of protein. b: takes off what is above 10 % of protein.")
            AvailableProtein.Rule rule) {}

    record ProteinOut(
            @Key(value = Unit.PERCENT, of = "dm") double acp,
            @Key(value = Unit.PERCENT, of = "cp") double bound) {}

    private static Answer<ProteinOut> availableProtein(ProteinIn in) {
        var protein = new AvailableProtein(in.cp, in.adicp, in.rule);
        return Answer.of(new ProteinOut(protein.percent(), protein.boundShare()), protein);
    }

    /** Nitrate is a share of dry matter; a unit without a basis means that. */
    enum NitrateUnit {
        PCT_DM(Unit.PERCENT),
        PCT(Unit.PERCENT),
        PPM_DM(Unit.PPM),
        PPM(Unit.PPM),
        G_PER_KG_DM(Unit.GRAM_PER_KG),
        MG_PER_KG_DM(Unit.MILLIGRAM_PER_KG);

        private final Unit unit;

        NitrateUnit(Unit unit) {
            this.unit = unit;
        }
    }

    record NitrateIn(
            double value,
            Nitrate.Form as,
            @Key(words = "Of dry matter.") NitrateUnit unit) {}

    record NitrateOut(
            @Key(value = Unit.PPM, name = "no3_n") double no3n,
            @Key(Unit.PPM) double no3,
            @Key(Unit.PPM) double kno3,
            List<NitrateSays> classes) {}

    record NitrateSays(String source, @Key(name = "class") String name, String words, String pregnant) {}

    private static Answer<NitrateOut> nitrate(NitrateIn in) {
        var nitrate = new Nitrate(in.value, in.as, in.unit.unit);
        var classes = nitrate.classes().stream()
                .map(c -> new NitrateSays(c.source().cite(), c.name(), c.words(), c.pregnantRule()))
                .toList();
        return new Answer<>(
                new NitrateOut(
                        nitrate.ppm(Nitrate.Form.NO3_N),
                        nitrate.ppm(Nitrate.Form.NO3),
                        nitrate.ppm(Nitrate.Form.KNO3),
                        classes),
                true,
                List.of(nitrate),
                nitrate.cautions());
    }

    record MineralsIn(
            @Key(value = Unit.PERCENT, of = "dm") @Nullable Double k,
            @Key(value = Unit.PERCENT, of = "dm") @Nullable Double ca,
            @Key(value = Unit.PERCENT, of = "dm") @Nullable Double mg,
            @Key(value = Unit.PERCENT, of = "dm") @Nullable Double na,
            @Key(value = Unit.PERCENT, of = "dm") @Nullable Double cl,
            @Key(value = Unit.PERCENT, of = "dm") @Nullable Double s) {}

    record MineralsOut(
            OptionalDouble tetanyRatio,
            @Key(Unit.MEQ_PER_KG) OptionalDouble dcad,
            @Key(Unit.MEQ_PER_KG) OptionalDouble electrolyteBalance) {}

    private static Answer<MineralsOut> mineralBalance(MineralsIn in) {
        var balance = new MineralBalance(in.k, in.ca, in.mg, in.na, in.cl, in.s);
        return new Answer<>(
                new MineralsOut(balance.tetanyRatio(), balance.dcad(), balance.electrolyteBalance()),
                true,
                List.of(balance),
                balance.cautions());
    }
}
