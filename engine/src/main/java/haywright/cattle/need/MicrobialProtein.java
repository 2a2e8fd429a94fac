package haywright.cattle.need;

import static haywright.quantity.Unit.GRAM_A_DAY;
import static haywright.quantity.Unit.KILOGRAM_A_DAY;
import static haywright.quantity.Unit.NONE;
import static haywright.quantity.Unit.PERCENT;

import haywright.cattle.Limits;
import haywright.cattle.RequirementSystem;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;

/**
 * Protein that the microbes of the rumen can make of a diet's energy, which is as much degradable protein as the diet has to
 * bring them.
 * <pre>
 * TDNI = DMI·TDN / 100                                kg a day
 * e    = 0.13 from 55 % TDN on, 0.006 less a point below it, never under 0.07
 * MCP  = e·TDNI·1000                                  edition of 1996
 * MCP  = 0.087·TDNI·1000 + 42.73                      edition of 2016, of diets under 3.9 % fat
 * RDP  = MCP                                          g a day
 * MPb  = 0.64·MCP                                     g a day of metabolizable protein
 * </pre>
 * For diets of forage, with fiber enough. The older edition says 0.07 to 0.10 for poor forage, below about 50 to 55 % TDN;
 * the straight way down is judgment.
 *
 * @param intake DMI, kg of dry matter a day
 * @param tdn of the diet, percent of dry matter
 */
public record MicrobialProtein(RequirementSystem system, double intake, double tdn) implements Worked {
    private static final Source OLDER = Source.memory("NRC 1996/2000 ch. 2: microbial protein is 0.13 of TDN eaten");
    private static final Source NEWER = Source.memory("NASEM 2016, microbial protein");
    private static final Source POOR =
            Source.judgment("0.07 to 0.10 below 50 to 55 % TDN (NRC 1996/2000, from memory), drawn straight");

    public MicrobialProtein {
        Limits.of("percent").check("tdn", tdn, PERCENT).refuse();
    }

    private double eaten() {
        return intake * tdn / 100;
    }

    private double efficiency() {
        return Math.max(0.07, 0.13 - 0.006 * Math.max(0, 55 - tdn));
    }

    /** MCP, g a day: also the degradable protein needed. */
    public double grams() {
        return system == RequirementSystem.NASEM_2016 ? 0.087 * eaten() * 1000 + 42.73 : efficiency() * eaten() * 1000;
    }

    /** Who says how much the rumen takes. */
    public Source source() {
        return system == RequirementSystem.NASEM_2016 ? NEWER : tdn < 55 ? POOR : OLDER;
    }

    /** g a day. */
    public double metabolizable() {
        return 0.64 * grams();
    }

    @Override
    public List<Line> lines() {
        var share = Input.typed("TDN", tdn, PERCENT);
        var eaten = Line.of(
                "TDNI",
                "DMI·TDN / 100",
                eaten(),
                KILOGRAM_A_DAY,
                Source.ARITHMETIC,
                Input.typed("DMI", intake, KILOGRAM_A_DAY),
                share);
        var metabolizable = Line.of("MPb", "0.64·MCP", metabolizable(), GRAM_A_DAY, OLDER);
        return system == RequirementSystem.NASEM_2016
                ? List.of(eaten, Line.of("MCP", "0.087·TDNI·1000 + 42.73", grams(), GRAM_A_DAY, NEWER), metabolizable)
                : List.of(
                        eaten,
                        Line.of("e", "max(0.07, 0.13 − 0.006·max(0, 55 − TDN))", efficiency(), NONE, POOR, share),
                        Line.of("MCP", "e·TDNI·1000", grams(), GRAM_A_DAY, OLDER),
                        metabolizable);
    }
}
