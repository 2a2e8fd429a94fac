package haywright.app.compute.topic;

import haywright.app.compute.shape.Key;
import haywright.app.compute.shape.Nearest;
import haywright.forage.energy.AdfEquation;
import haywright.forage.energy.AdfTdn;
import haywright.forage.energy.DigestibleEnergy;
import haywright.forage.energy.Fractions;
import haywright.forage.energy.ProximateTdn;
import haywright.forage.energy.SummativeTdn;
import haywright.forage.energy.Tdn;
import haywright.forage.energy.WeissTdn;
import haywright.quantity.Unit;
import haywright.workings.Caution;
import haywright.workings.Problem;
import haywright.workings.Refused;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Total digestible nutrients by whichever published equation is named. */
final class TdnTopic {
    private static final String SUMMATIVE = "nrc-2001-summative";
    private static final String WEISS = "weiss-1992";
    private static final String PROXIMATE = "proximate";

    private TdnTopic() {}

    static final Topic<In, Out> TOPIC = new Topic<>(
            "tdn", "Total digestible nutrients by a named equation.", In.class, Out.class, """
                    {"equation":"nrc-2001-summative","kind":"forage","ndf_pct_dm":45,"ndicp_pct_dm":2.5,"lignin_pct_dm":7,\
                    "cp_pct_dm":18,"adicp_pct_dm":1.2,"fat_pct_dm":2.2,"ash_pct_dm":9}""", TdnTopic::tdn);

    record In(
            @Key(words = "nrc-2001-summative, weiss-1992, proximate, or the name of a published line from ADF.")
            String equation,

            @Key(words = "For nrc-2001-summative.") SummativeTdn.@Nullable Kind kind,
            @Key(value = Unit.PERCENT, of = "dm") OptionalDouble adf,
            @Key(value = Unit.PERCENT, of = "dm") OptionalDouble ndf,

            @Key(value = Unit.PERCENT, of = "dm", name = "crude_fiber", words = "For proximate.")
            OptionalDouble cf,

            @Key(value = Unit.PERCENT, of = "dm") OptionalDouble ndicp,
            @Key(value = Unit.PERCENT, of = "dm") OptionalDouble lignin,
            @Key(value = Unit.PERCENT, of = "dm") OptionalDouble cp,
            @Key(value = Unit.PERCENT, of = "dm") OptionalDouble adicp,
            @Key(value = Unit.PERCENT, of = "dm") OptionalDouble fat,
            @Key(value = Unit.PERCENT, of = "dm") OptionalDouble ash,

            @Key(
                    value = Unit.PERCENT,
                    of = "ndf",
                    name = "ndfd48",
                    words = "For nrc-2001-summative: digested in 48 hours, in place of what lignin says.")
            OptionalDouble ndfd,

            @Key(name = "processing_factor", words = "For nrc-2001-summative; 1 where the source lists none.")
            OptionalDouble processing) {
        private Fractions fractions() {
            var missing = new ArrayList<Problem>();
            need(missing, "ndf", ndf);
            need(missing, "ndicp", ndicp);
            need(missing, "lignin", lignin);
            need(missing, "cp", cp);
            need(missing, "adicp", adicp);
            need(missing, "fat", fat);
            need(missing, "ash", ash);
            Refused.unlessEmpty(missing);
            return new Fractions(
                    ndf.getAsDouble(),
                    ndicp.getAsDouble(),
                    lignin.getAsDouble(),
                    cp.getAsDouble(),
                    adicp.getAsDouble(),
                    fat.getAsDouble(),
                    ash.getAsDouble());
        }

        private void need(List<Problem> missing, String field, OptionalDouble value) {
            if (value.isEmpty()) {
                missing.add(new Problem(
                        field, "nothing", "the equation " + equation + " needs it", "Add it, or pick another."));
            }
        }

        private Tdn tdn() {
            if (equation.equals(SUMMATIVE)) {
                if (kind == null) {
                    throw new Refused(
                            "kind", "nothing", "bound protein counts by kind of feed", "Add forage or concentrate.");
                }
                return new SummativeTdn(fractions(), kind, processing.orElse(1), ndfd);
            }
            if (equation.equals(WEISS)) {
                return new WeissTdn(fractions());
            }
            var missing = new ArrayList<Problem>();
            if (equation.equals(PROXIMATE)) {
                need(missing, "cp", cp);
                need(missing, "cf", cf);
                need(missing, "fat", fat);
                need(missing, "ash", ash);
                Refused.unlessEmpty(missing);
                return new ProximateTdn(cp.getAsDouble(), cf.getAsDouble(), fat.getAsDouble(), ash.getAsDouble());
            }
            var line = line();
            need(missing, "adf", adf);
            Refused.unlessEmpty(missing);
            return new AdfTdn(line, adf.getAsDouble());
        }

        private AdfEquation line() {
            return AdfEquation.published().stream()
                    .filter(line -> line.id().equals(equation))
                    .findFirst()
                    .orElseThrow(() -> {
                        var known = Stream.concat(
                                        Stream.of(SUMMATIVE, WEISS, PROXIMATE),
                                        AdfEquation.published().stream().map(AdfEquation::id))
                                .toList();
                        return new Refused(
                                "equation",
                                equation,
                                "no equation has this name; there are " + String.join(", ", known),
                                Nearest.to(equation, known)
                                        .map("Did you mean %s?"::formatted)
                                        .orElse("Choose one of them."));
                    });
        }
    }

    record Out(@Key(value = Unit.PERCENT, of = "dm") double tdn) {}

    private static Answer<Out> tdn(In in) {
        var tdn = in.tdn();
        var cautions = new ArrayList<Caution>();
        if (tdn instanceof AdfTdn line && !line.inRange()) {
            cautions.add(new Caution(
                    "Lines from ADF alone were fitted from about 20 to 50 % ADF: take this figure as rough.",
                    line.equation().source()));
        }
        tdn.residual()
                .ifPresent(residual -> cautions.add(new Caution(
                        "What cattle get out of such feed lies about %s points of TDN around it (standard deviation)."
                                .formatted(residual.said()),
                        residual.source())));
        var workings = new ArrayList<Worked>(List.of(tdn));
        if (tdn instanceof SummativeTdn parts) {
            workings.add(new DigestibleEnergy(parts));
        }
        return new Answer<>(new Out(tdn.percent()), true, workings, cautions);
    }
}
