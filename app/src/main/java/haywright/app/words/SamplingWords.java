package haywright.app.words;

import haywright.sampling.Material;
import haywright.sampling.Purpose;
import haywright.sampling.Rule;
import haywright.sampling.Safety;
import haywright.sampling.SamplingPlan;
import haywright.sampling.stock.Layout;
import haywright.workings.Caution;
import haywright.workings.PublishedTable;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What a sampling plan says to the person who takes the sample: what to bring, what to mind, what to do at the stack. */
public final class SamplingWords {
    private static final PublishedTable CAUTIONS = PublishedTable.read(SamplingWords.class, "cautions.csv");

    private SamplingWords() {}

    /** What to load. */
    public static List<String> kit(SamplingPlan plan) {
        var material = plan.subject().material();
        var purpose = plan.aim().purpose();
        var kit = new ArrayList<String>();
        switch (material.way()) {
            case CORED -> {
                kit.add("hollow probe with a sharp tip, and push rod");
                kit.add("drill with a side handle, " + plan.outing().batteries() + " charged batteries kept warm");
                kit.add("clean 5-gallon bucket with a lid");
                kit.add("eye protection; mask for dusty hay");
                if (material.isBaled()) {
                    kit.add("scale for 5 to 10 bales, or the loader's");
                }
            }
            case GRABBED -> {
                kit.add("clean scoop");
                kit.add("clean bucket, and a clean tarp to mix and quarter on");
            }
            case CLIPPED -> {
                kit.add("frame of known area, hand shears");
                kit.add("paper bag a plot, small scale that reads 1 g");
                kit.add("the walk on a phone or GPS");
            }
            case BOTTLED -> {
                kit.add("clean bottle from the laboratory, a sterile one for bacteria");
                kit.add("pole with a clamp, so nobody leans over the edge");
                kit.add("gloves");
            }
        }
        if (material == Material.BAGGED_FEED) {
            kit.add("slotted bag probe, and tape to close the bags");
        }
        if (material == Material.BALEAGE) {
            kit.add("bale tape: close every hole at once");
        }
        if (material.needsCold() || purpose == Purpose.PRUSSIC_ACID) {
            kit.add("cooler with ice packs");
        }
        if (material != Material.STOCK_WATER) {
            kit.add(purpose == Purpose.MOULDS ? "breathable bags for ten pounds" : "1-gallon bags that close airtight");
        }
        kit.add("field sheet with its bag labels, pencil");
        return kit;
    }

    /** What to do where a stack of square bales shows no end; empty for everything else. */
    public static String buttEnds(SamplingPlan plan) {
        var material = plan.subject().material();
        boolean large = material == Material.LARGE_SQUARE_BALE;
        return plan.subject().layout() instanceof Layout.Block && (large || material == Material.SMALL_SQUARE_BALE)
                ? "Butt ends only: they show on two opposite faces. Where the list names a face with"
                        + " sides, take the nearest bale of that tier with an end showing, and write down which"
                        + (large
                                ? "; if none is in reach, core the middle of the side you see and write that down."
                                : ".")
                : "";
    }

    /** What to mind: local rules first, then what the place is dangerous for, then what the purpose asks. */
    public static List<Caution> cautions(SamplingPlan plan) {
        var purpose = plan.aim().purpose();
        var cautions = new ArrayList<Caution>();
        cautions.add(
                new Caution("Local and ranch safety rules come first.", Source.practice("common practice, no source")));
        cautions.add(new Caution(
                "Go by daylight and not alone, or tell somebody where you are and when you will be back.",
                Source.practice("common practice, no source")));
        cautions.add(new Caution(
                "In the cold: dry gloves, a warm cab nearby, and stop before your hands go numb. Watch for ice"
                        + " around the stack; stay off thin ice.",
                Source.practice("common practice, no source")));
        cautions.addAll(cautions(plan.subject().material()));
        var why = purpose.why();
        if (!why.isEmpty()) {
            cautions.add(new Caution(Show.capital(why) + ".", purpose.source()));
        }
        if (purpose == Purpose.NITRATE || purpose == Purpose.PRUSSIC_ACID || purpose == Purpose.MOULDS) {
            cautions.add(new Caution(
                    "Treat the feed as dangerous until the result is in. Ask your veterinarian before feeding it.",
                    Source.practice("common practice, no source")));
        }
        return cautions;
    }

    /** Of one material: one or two sentences a danger, the strictest published figure first. */
    static List<Caution> cautions(Material material) {
        return CAUTIONS.rows().stream()
                .filter(row -> Arrays.asList(row.text("materials").split(" ")).contains(material.name()))
                .map(row -> new Caution(row.text("words"), standsOn(row, material)))
                .toList();
    }

    private static Source standsOn(PublishedTable.Row row, Material material) {
        var rules = row.some("stands_on").stream()
                .flatMap(ids -> Arrays.stream(ids.split(" ")))
                .map(id -> Safety.rule(id).source())
                .toList();
        return rules.isEmpty()
                ? material.method().source()
                : new Source(
                        rules.stream().map(Source::cite).distinct().collect(Collectors.joining("; ")),
                        rules.get(0).known());
    }

    /** Why the plan follows the rule that it follows. @param asked the rule that was chosen; null where none was */
    public static String whyRule(Material material, @Nullable Rule asked) {
        if (asked != null) {
            return "Your choice.";
        }
        if (material == Material.BAGGED_FEED) {
            return "Published for bags.";
        }
        return material.isCounted()
                ? "Published for bales; it spreads the cores over the most" + " bales."
                : "Published for this material, which is not counted in bales.";
    }
}
