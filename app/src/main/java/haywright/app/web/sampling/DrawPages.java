package haywright.app.web.sampling;

import haywright.app.report.picture.SketchDrawing;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Show;
import haywright.quantity.Unit;
import haywright.ranch.Field;
import haywright.sampling.field.FieldShape;
import haywright.sampling.field.FieldSketch;
import haywright.sampling.field.FieldSketch.Point;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * An outline drawn on a sheet: each tap, or each leg typed, is one round trip and adds a corner, so it works without
 * scripts and a look back in the browser takes corners back. What is drawn so far is kept as a draft.
 */
public final class DrawPages {
    private static final String DRAW = "haywright/app/web/sampling/draw.jte";

    private DrawPages() {}

    static void routes(Routes on) {
        on.get("take/fields/draw", page -> show(page, new Target(null, false)));
        on.post("take/fields/draw", page -> step(page, new Target(null, false)));
        on.get("take/fields/{field}/draw", page -> show(page, new Target(FieldPages.field(page), false)));
        on.post("take/fields/{field}/draw", page -> step(page, new Target(FieldPages.field(page), false)));
        on.get("take/fields/{field}/zone", page -> show(page, new Target(FieldPages.field(page), true)));
        on.post("take/fields/{field}/zone", page -> step(page, new Target(FieldPages.field(page), true)));
    }

    /** @param field null for a new one; with {@code zone} the outline is a zone in it */
    record Target(@Nullable Field field, boolean zone) {
        String key() {
            return field == null ? "take/fields/draw" : "take/fields/" + field.id() + (zone ? "/zone" : "/draw");
        }

        String back() {
            return field == null ? "take/fields/new" : "take/fields/" + field.id();
        }
    }

    /**
     * @param sheet null until the place that is known is
     * @param legs each corner so far, in words
     * @param says its area, or what is wrong with it if it were closed now
     */
    public record View(
            Form form,
            String title,
            boolean isNew,
            @Nullable SketchDrawing sheet,
            List<String> legs,
            String says,
            String action,
            String back) {}

    private static void show(Page page, Target target) {
        var form = page.form(target.key(), () -> SketchForm.known(target.field(), target.zone()));
        var isLaidOut = target.field() != null || !form.isEmpty(SketchForm.LATITUDE);
        page.show(
                DRAW,
                view(
                        page,
                        target,
                        form,
                        isLaidOut
                                ? SketchForm.sheet(form, target.field(), target.zone())
                                        .orElse(null)
                                : null));
    }

    private static View view(Page page, Target target, Form form, @Nullable SketchDrawing sheet) {
        var field = target.field();
        return new View(
                form,
                field == null
                        ? "Draw a field"
                        : target.zone() ? "Draw a zone in " + field.name() : "Draw " + field.name() + " anew",
                field == null,
                sheet,
                sheet == null ? List.of() : legs(sheet.sketch().corners()),
                sheet == null ? "" : says(sheet.sketch()),
                page.at(target.key()),
                page.at(target.back()));
    }

    private static List<String> legs(List<Point> corners) {
        var legs = new ArrayList<String>();
        for (int i = 0; i < corners.size(); i++) {
            var at = corners.get(i);
            var from = "%s %s, %s %s of the start"
                    .formatted(
                            yards(at.east()),
                            at.east() < 0 ? "west" : "east",
                            yards(at.north()),
                            at.north() < 0 ? "south" : "north");
            legs.add(
                    i == 0
                            ? (at.equals(Point.START) ? "the start" : from)
                            : "%s from the last; %s".formatted(yards(at.to(corners.get(i - 1))), from));
        }
        return legs;
    }

    private static String yards(double meters) {
        return "%.0f yd".formatted(Math.abs(Unit.YARD.fromBase(meters)));
    }

    private static String says(FieldSketch sketch) {
        int corners = sketch.corners().size();
        if (corners < 3) {
            return corners == 0
                    ? "No corner yet."
                    : Show.count(corners, "corner") + " so far; a field needs three or more.";
        }
        try {
            return "%s acres, closed from corner %d back to 1.".formatted(FieldPages.acres(sketch.shape()), corners);
        } catch (Refused refused) {
            var problem = refused.problems().get(0);
            return "It can’t be closed yet: %s (%s).".formatted(problem.value(), problem.rule());
        }
    }

    private static void step(Page page, Target target) {
        var form = page.posted(target.key());
        var sheet = SketchForm.sheet(form, target.field(), target.zone());
        if (sheet.isEmpty()) {
            page.reject(form, DRAW, view(page, target, form, null));
            return;
        }
        var asked = form.value("do");
        if (asked.equals("save")) {
            save(page, target, form, sheet.get());
            return;
        }
        var now = sheet.get().sketch();
        var next = form.build(() -> SketchForm.beside(() -> SketchForm.next(form, asked, sheet.get())));
        if (next.isEmpty()) {
            page.reject(form, DRAW, view(page, target, form, sheet.get()));
            return;
        }
        var typed = new LinkedHashMap<>(page.http().formParamMap());
        typed.keySet().removeIf(name -> name.matches("do|(tap|wide)\\.[xy]"));
        typed.put(SketchForm.CORNERS.name(), List.of(SketchForm.write(next.get().corners())));
        if (!next.get().equals(now)) {
            SketchForm.NEXT.forEach(ask -> typed.remove(ask.name()));
        }
        page.keep(Form.posted(target.key(), typed));
        Page.leave(page.http(), page.at(target.key()) + "#sheet");
    }

    private static void save(Page page, Target target, Form form, SketchDrawing sheet) {
        var before = target.field();
        var name = before == null ? form.name(FieldPages.NAME, "Enter a name.") : "";
        var grows = form.text(FieldPages.GROWS);
        var drawn = form.part(() -> SketchForm.beside(() -> sheet.sketch().shape()));
        if (!target.zone()) {
            drawn.ifPresent(s -> FieldPages.judge(page, form, SketchForm.CORNERS, s, before));
        }
        var field = form.build(() -> SketchForm.beside(() -> {
            var shape = drawn.orElseThrow();
            if (before == null) {
                return new Field(UUID.randomUUID(), name, grows, FieldPages.polygon(shape), List.of());
            }
            return target.zone() ? before.with(FieldPages.polygon(shape)) : anew(before, shape);
        }));
        if (field.isEmpty()) {
            page.reject(form, DRAW, view(page, target, form, sheet));
            return;
        }
        FieldPages.keep(
                page,
                form,
                field.get(),
                before == null ? "Field drawn: " : target.zone() ? "Zone marked: " : "Field changed: ");
    }

    /** Holes stay where they are. */
    private static Field anew(Field before, FieldShape outer) {
        var rings = new ArrayList<>(outer.rings());
        var old = before.shape().rings();
        rings.addAll(old.subList(1, old.size()));
        return new Field(
                before.id(), before.name(), before.grows(), FieldPages.polygon(new FieldShape(rings)), before.zones());
    }
}
