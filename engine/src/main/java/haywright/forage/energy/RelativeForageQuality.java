package haywright.forage.energy;

import haywright.forage.Percent;
import haywright.forage.Say;
import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Problem;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Relative forage quality: as relative feed value, with the fiber's own digestibility in it.
 *
 * <pre>
 * NDFn = NDF − NDICP, or 0.93·NDF where NDICP was not measured
 * NFC  = 100 − (NDFn + CP + EE + ash),   FA = EE − 1, never under 0
 *
 * LEGUME, also with grass in it
 * TDN = 0.98·NFC + 0.93·CP + 2.25·0.97·FA + NDFn·NDFD / 100 − 7
 * DMI = 120 / NDF + (NDFD − 45)·0.374·100 / 1350
 *
 * GRASS
 * NDFDp = 22.7 + 0.664·NDFD
 * TDN = 0.98·NFC + 0.87·CP + 2.25·0.97·FA + NDFn·NDFDp / 100 − 10
 * DMI = −2.318 + 0.442·CP − 0.0100·CP^2 − 0.0638·TDN + 0.000922·TDN^2 + 0.180·ADF − 0.00196·ADF^2 − 0.00529·CP·ADF
 *
 * RFQ = DMI·TDN / 1.23
 * </pre>
 *
 * TDN in percent of dry matter, DMI in percent of body weight. The intake of grass is a curve through grazed forage:
 * it holds for CP 4 to 25, ADF 25 to 50, TDN 40 to 70. A fact sheet that writes the legume's TDN with the whole NDF in
 * place of NDFn gets a higher figure.
 *
 * @param adf needed for grass
 * @param ndfd digested in 48 hours, percent of NDF; a figure of 30 hours is another measurement
 * @see "Georgia Forages glossary: both TDN; Undersander, Relative Forage Quality, University of Wisconsin: RFQ; the
 *     intakes are from memory"
 */
public record RelativeForageQuality(
        Stand stand,
        OptionalDouble adf,
        double ndf,
        OptionalDouble ndicp,
        double cp,
        double fat,
        double ash,
        double ndfd)
        implements Worked {
    private static final Source TDN = Source.read("Georgia Forages glossary, University of Georgia");
    private static final Source RFQ =
            Source.read("Undersander, Relative Forage Quality, University of Wisconsin Extension");
    private static final Source LEGUME_INTAKE =
            Source.memory("Moore and Undersander 2002, intake of legume and legume-grass forage");
    private static final Source GRASS_INTAKE = Source.memory("Moore and Kunkle 1999, intake of grass");

    /** What stands most in it. */
    public enum Stand {
        LEGUME,
        GRASS
    }

    public RelativeForageQuality {
        var problems = new ArrayList<Problem>();
        adf.ifPresent(v -> Percent.check(problems, "adf", "ADF", v));
        ndicp.ifPresent(v -> Percent.check(problems, "ndicp", "NDICP", v));
        Percent.check(problems, "ndf", "NDF", ndf);
        Percent.check(problems, "cp", "CP", cp);
        Percent.check(problems, "fat", "fat", fat);
        Percent.check(problems, "ash", "ash", ash);
        if (!(ndfd >= 0 && ndfd <= 100)) {
            problems.add(new Problem(
                    "ndfd",
                    "NDFD %s %% of NDF".formatted(Say.number(ndfd)),
                    "what is digested of the fiber is 0 to 100 % of it",
                    "Is it percent of NDF?"));
        }
        if (stand == Stand.GRASS && adf.isEmpty()) {
            problems.add(new Problem("adf", "nothing", "the intake of grass needs ADF", "Add it."));
        }
        if (problems.isEmpty()) {
            var fiber = new Fiber(adf.orElse(0), ndf);
            double bound = ndicp.orElse(0);
            if (bound > cp || fiber.ndf() - bound < 0) {
                problems.add(new Problem(
                        "ndicp",
                        "NDICP %s %% beside CP %s %% and NDF %s %%"
                                .formatted(Say.number(bound), Say.number(cp), Say.number(ndf)),
                        "it is part of both and cannot be more than either",
                        "Is it printed as a share of protein?"));
            }
            double parts = (ndicp.isPresent() ? ndf - bound : 0.93 * ndf) + cp + fat + ash;
            if (parts > 100) {
                problems.add(new Problem(
                        "ash",
                        "fiber without its protein, protein, fat and ash add up to %s %%".formatted(Say.number(parts)),
                        "together they are at most 100 % of dry matter",
                        "Is one of them as received, or in another unit?"));
            }
        }
        Refused.unlessEmpty(problems);
    }

    double ndfn() {
        return ndicp.isPresent() ? ndf - ndicp.getAsDouble() : 0.93 * ndf;
    }

    double nonFiber() {
        return 100 - (ndfn() + cp + fat + ash);
    }

    double fattyAcids() {
        return Math.max(0, fat - 1);
    }

    private double digestedOfGrass() {
        return 22.7 + 0.664 * ndfd;
    }

    /** Percent of dry matter. */
    public double tdn() {
        double rest = 2.25 * 0.97 * fattyAcids();
        return stand == Stand.LEGUME
                ? 0.98 * nonFiber() + 0.93 * cp + rest + ndfn() * ndfd / 100 - 7
                : 0.98 * nonFiber() + 0.87 * cp + rest + ndfn() * digestedOfGrass() / 100 - 10;
    }

    /** Dry matter eaten, percent of body weight. */
    public double intake() {
        if (stand == Stand.LEGUME) {
            return 120 / ndf + (ndfd - 45) * 0.374 * 100 / 1350;
        }
        double adf = this.adf.orElseThrow();
        double tdn = tdn();
        return -2.318
                + 0.442 * cp
                - 0.0100 * cp * cp
                - 0.0638 * tdn
                + 0.000922 * tdn * tdn
                + 0.180 * adf
                - 0.00196 * adf * adf
                - 0.00529 * cp * adf;
    }

    public double index() {
        return intake() * tdn() / 1.23;
    }

    /** Whether protein, fiber and TDN lie where the intake of grass was fitted; true for legumes. */
    public boolean inRange() {
        double adf = this.adf.orElse(30);
        return stand == Stand.LEGUME || cp >= 4 && cp <= 25 && adf >= 25 && adf <= 50 && tdn() >= 40 && tdn() <= 70;
    }

    @Override
    public List<Line> lines() {
        var lines = new ArrayList<Line>();
        var fiber = in("NDF", ndf);
        lines.add(
                ndicp.isPresent()
                        ? Line.of(
                                "NDFn",
                                "NDF − NDICP",
                                ndfn(),
                                Unit.PERCENT,
                                TDN,
                                fiber,
                                in("NDICP", ndicp.getAsDouble()))
                        : Line.of("NDFn", "0.93·NDF", ndfn(), Unit.PERCENT, TDN, fiber));
        var protein = in("CP", cp);
        var digested = in("NDFD", ndfd);
        lines.add(Line.of(
                "NFC",
                "100 − (NDFn + CP + EE + ash)",
                nonFiber(),
                Unit.PERCENT,
                TDN,
                protein,
                in("EE", fat),
                in("ash", ash)));
        lines.add(Line.of("FA", "max(0, EE − 1)", fattyAcids(), Unit.PERCENT, TDN, in("EE", fat)));
        if (stand == Stand.LEGUME) {
            lines.add(Line.of(
                    "TDN",
                    "0.98·NFC + 0.93·CP + 2.25·0.97·FA + NDFn·NDFD / 100 − 7",
                    tdn(),
                    Unit.PERCENT,
                    TDN,
                    protein,
                    digested));
            lines.add(Line.of(
                    "DMI",
                    "120 / NDF + (NDFD − 45)·0.374·100 / 1350",
                    intake(),
                    Unit.PERCENT,
                    LEGUME_INTAKE,
                    fiber,
                    digested));
        } else {
            lines.add(Line.of("NDFDp", "22.7 + 0.664·NDFD", digestedOfGrass(), Unit.PERCENT, TDN, digested));
            lines.add(Line.of(
                    "TDN",
                    "0.98·NFC + 0.87·CP + 2.25·0.97·FA + NDFn·NDFDp / 100 − 10",
                    tdn(),
                    Unit.PERCENT,
                    TDN,
                    protein));
            lines.add(Line.of(
                    "DMI",
                    "−2.318 + 0.442·CP − 0.0100·CP^2 − 0.0638·TDN + 0.000922·TDN^2 + 0.180·ADF − 0.00196·ADF^2 − 0.00529·CP·ADF",
                    intake(),
                    Unit.PERCENT,
                    GRASS_INTAKE,
                    protein,
                    in("ADF", adf.orElseThrow())));
        }
        lines.add(Line.of("RFQ", "DMI·TDN / 1.23", index(), Unit.NONE, RFQ));
        return lines;
    }

    private static Input in(String symbol, double value) {
        return Input.typed(symbol, value, Unit.PERCENT);
    }
}
