package haywright.app.web.lab;

import haywright.app.words.Show;
import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import haywright.forage.hazard.AvailableProtein;
import haywright.forage.hazard.Fermentation;
import haywright.forage.hazard.HazardClass;
import haywright.forage.hazard.SoilInFeed;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What besides nitrate can be wrong with a feed, of what was measured: toxins, heat, soil, bad fermentation. Where sources
 * disagree all of them stand here, the stricter first.
 *
 * @param title "Aflatoxin: 45 ppb"
 * @param danger whether the strictest calls it dangerous
 * @param says one line for each source or finding
 */
public record HazardView(
        String title,
        boolean danger,
        boolean watch,
        List<Line> says,
        @Nullable Worked worked,
        String then) {
    /** @param small where it is from */
    public record Line(String words, String small) {}

    static final String ASK_VET = "Ask your veterinarian before it is fed, and follow local rules.";

    static List<HazardView> of(FeedClass feedClass, Optional<FeedBook.Row> row, Composition made) {
        var views = new ArrayList<HazardView>();
        for (var analyte : made.values().keySet()) {
            HazardClass.Hazard.of(analyte)
                    .ifPresent(hazard ->
                            views.add(toxin(hazard, made.value(analyte).orElseThrow())));
        }
        if (made.values().containsKey(Analyte.ADICP)
                && made.values().containsKey(Analyte.CP)
                && isMeasured(made, Analyte.ADICP)) {
            views.add(boundProtein(feedClass, made));
        }
        if (isMeasured(made, Analyte.ASH) && feedClass.isForage()) {
            soil(feedClass, row, made.value(Analyte.ASH).orElseThrow()).forEach(views::add);
        }
        fermentation(feedClass, made).forEach(views::add);
        views.addAll(MineralView.of(measured(made)));
        return views;
    }

    /** What is the lot's own: what the book or the kind lends is no finding. */
    static Composition measured(Composition made) {
        var own = new EnumMap<Analyte, Composition.Known>(Analyte.class);
        made.values().forEach((analyte, known) -> {
            if (Figures.isReported(known.origin())) {
                own.put(analyte, known);
            }
        });
        return new Composition(own);
    }

    private static boolean isMeasured(Composition made, Analyte analyte) {
        var known = made.values().get(analyte);
        return known != null && Figures.isReported(known.origin());
    }

    private static HazardView toxin(HazardClass.Hazard hazard, double value) {
        var classes = HazardClass.of(hazard, value);
        var worst = classes.get(0).level();
        return new HazardView(
                "%s: %s %s".formatted(hazard.words(), Show.significant(value, 3), hazard.unit()),
                worst == HazardClass.Level.DANGER,
                worst == HazardClass.Level.WATCH,
                classes.stream()
                        .map(c -> new Line("For %s: %s".formatted(c.whom(), c.words()), from(c.source())))
                        .toList(),
                null,
                worst == HazardClass.Level.SAFE ? "" : ASK_VET);
    }

    static String from(Source source) {
        return source.cite() + ", " + source.known().words();
    }

    private static HazardView boundProtein(FeedClass feedClass, Composition made) {
        double cp = made.value(Analyte.CP).orElseThrow();
        double adicp = Math.min(cp, made.value(Analyte.ADICP).orElseThrow());
        var rules = new ArrayList<AvailableProtein>();
        for (var rule : AvailableProtein.Rule.values()) {
            rules.add(new AvailableProtein(cp, adicp, rule));
        }
        rules.sort(Comparator.comparingDouble(AvailableProtein::percent));
        double share = rules.get(0).boundShare();
        boolean forage = feedClass.isForage();
        var lines = new ArrayList<Line>();
        if (forage) {
            for (var rule : rules) {
                lines.add(new Line(
                        "Rule %s leaves %s of %s crude protein"
                                .formatted(
                                        rule.rule(),
                                        Figures.say(Analyte.CP, rule.percent()),
                                        Figures.say(Analyte.CP, cp)),
                        from(rule.rule().source())));
            }
        } else {
            lines.add(new Line(
                    "The rules for forage are not for it: what heat has bound in such feeds is digested in part",
                    "from reading on distillers grains"));
        }
        return new HazardView(
                "Protein bound by heat: %s %% of the protein".formatted(Show.number(share, 0)),
                false,
                forage && share > 10,
                lines,
                forage ? rules.get(0) : null,
                forage && share > 10
                        ? "Rations count crude protein: take the stricter figure into account. Hay that heated can burn; check"
                                + " its temperature and follow local fire rules."
                        : "");
    }

    private static List<HazardView> soil(FeedClass feedClass, Optional<FeedBook.Row> row, double ash) {
        var soil = SoilInFeed.of(feedClass, row, ash);
        return soil.percent() < 1
                ? List.of()
                : List.of(new HazardView(
                        "Soil in it: about %s %% of dry matter".formatted(Show.number(soil.percent(), 0)),
                        false,
                        soil.percent() > 3,
                        List.of(new Line(
                                "Its ash less the ash that such feed usually has; a rough figure, rather too much than too little",
                                from(soil.lines().get(0).source()))),
                        soil,
                        "TDN from fiber does not see ash: so much of the dry matter feeds nobody."));
    }

    private static List<HazardView> fermentation(FeedClass feedClass, Composition made) {
        var silage = new Fermentation(feedClass, made);
        var findings = silage.findings();
        if (findings.isEmpty()) {
            return List.of();
        }
        var lines = new ArrayList<Line>();
        for (var f : findings) {
            lines.add(new Line(
                    "%s %s: %s, usual %s"
                            .formatted(
                                    f.analyte().words(),
                                    Figures.say(f.analyte(), f.value()),
                                    f.isUsual() ? "as usual" : "<outside>",
                                    f.low().isPresent()
                                            ? "is %s to %s"
                                                    .formatted(
                                                            Show.significant(
                                                                    f.low().getAsDouble(), 3),
                                                            Show.significant(f.high(), 3))
                                            : "is at most " + Show.significant(f.high(), 3))
                            .replace("<outside>", f.value() > f.high() ? "high" : "low"),
                    from(f.source())));
        }
        boolean clostridia = findings.stream()
                .anyMatch(f -> f.analyte() == Analyte.BUTYRIC && f.value() > 0.5
                        || f.analyte() == Analyte.NH3N && f.value() > 15);
        boolean unusual = findings.stream().anyMatch(f -> !f.isUsual()) || !silage.lacticLeads();
        if (!silage.lacticLeads()) {
            lines.add(new Line("Lactic acid is less than three times the other acids", "from memory"));
        }
        return List.of(new HazardView(
                unusual ? "It did not ferment as it should" : "It fermented as it should",
                false,
                clostridia,
                lines,
                null,
                clostridia
                        ? "Clostridia have been at it: look for spoiled parts, keep them out, and ask a veterinarian before it is"
                                + " fed. A silage face can fall: stay three times its height away."
                        : ""));
    }
}
