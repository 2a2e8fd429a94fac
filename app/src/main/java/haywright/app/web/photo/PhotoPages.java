package haywright.app.web.photo;

import haywright.app.exchange.image.Photo;
import haywright.app.store.Attachments;
import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.web.Sent;
import haywright.app.words.Show;
import haywright.ranch.Attachment;
import haywright.ranch.Ranch;
import haywright.workings.Refused;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The photos of one lot, or of the sheet of one report: what a stack looks like, where a tag hangs, what a hand wrote. */
public final class PhotoPages {
    public static final Ask FILE = Ask.text("file", "Photos", "JPEG or PNG, several at once.");
    public static final Ask SHOWS = Ask.text("shows", "What they show", "North side, Oct 6. Or the sheet as it came.");

    /** Each is about half a megabyte, and an exported ranch carries them all. */
    private static final int MOST = 12;

    private static final String PAGE = "haywright/app/web/photo/photos.jte";

    private PhotoPages() {}

    public static void routes(Routes on) {
        on.get("photos/{about}", page -> show(page, page.form(key(page), Map::of)));
        on.post("photos/{about}", PhotoPages::take);
        on.get("photos/{about}/{photo}", PhotoPages::send);
        on.post("photos/{about}/{photo}/delete", PhotoPages::delete);
    }

    /**
     * @param of whose photos they are: "Ditch-side stack", "report of Oct 14 on Ditch-side stack"
     * @param back the page of what they are about, from the ranch
     * @param refused beside the box of the files; empty where nothing is wrong with them
     */
    public record View(UUID about, String of, String back, List<Attachment> photos, Form form, String refused) {}

    /** Oldest first. */
    public static List<Attachment> of(Ranch ranch, UUID about) {
        return ranch.attachments().values().stream()
                .filter(one -> one.about().equals(about) && one.isPicture())
                .toList();
    }

    private static String key(Page page) {
        return "photos/" + page.id("about");
    }

    private static void show(Page page, Form form) {
        page.show(PAGE, view(page, form));
    }

    private static View view(Page page, Form form) {
        var ranch = page.ranch();
        var about = page.id("about");
        var report = ranch.reports().get(about);
        var lot = report == null
                ? page.find(ranch.lots(), "about")
                : Objects.requireNonNull(ranch.lots().get(report.lot()));
        return new View(
                about,
                report == null
                        ? lot.name()
                        : "the sheet, "
                                + Stream.of(report.sampleCode(), lot.name())
                                        .filter(part -> !part.isBlank())
                                        .collect(Collectors.joining(", ")),
                (report == null ? "lots/" : "reports/") + about,
                of(ranch, about),
                form,
                form.problem(FILE));
    }

    private static void take(Page page) throws IOException {
        var form = page.posted(key(page));
        var view = view(page, form);
        var says = form.text(SHOWS);
        var files = page.http().uploadedFiles(FILE.name()).stream()
                .filter(file -> file.size() > 0)
                .toList();
        if (files.isEmpty()) {
            form.refuse(FILE.name(), "", "no file was chosen", "Choose one or more photos.");
        } else if (view.photos().size() + files.size() > MOST) {
            form.refuse(
                    FILE.name(),
                    Show.count(files.size(), "photo"),
                    "%d are kept of one lot or sheet, and there are %d"
                            .formatted(MOST, view.photos().size()),
                    "Delete some first, or choose the best.");
        }
        var bodies = new ArrayList<byte[]>();
        for (var file : files) {
            if (!form.hasProblems()) {
                draw(form, file, bodies);
            }
        }
        if (form.hasProblems()) {
            page.reject(form, PAGE, view(page, form));
            return;
        }
        var kept = new ArrayList<Attachment>();
        for (int i = 0; i < bodies.size(); i++) {
            var sha256 = page.desk().store().attachments().keep(new Attachments.Body(Photo.TYPE, bodies.get(i)));
            kept.add(new Attachment(
                    UUID.randomUUID(),
                    view.about(),
                    says.isEmpty() ? name(files.get(i), i) : says,
                    Photo.TYPE,
                    sha256));
        }
        page.save(
                form,
                "%s added: %s".formatted(Show.count(kept.size(), "photo"), view.of()),
                ranch -> {
                    var all = ranch;
                    for (var one : kept) {
                        all = all.with(one);
                    }
                    return all;
                },
                key(page));
    }

    private static void draw(Form form, UploadedFile file, List<byte[]> into) throws IOException {
        try (var in = file.content()) {
            into.add(Photo.of(FILE.name(), file.filename(), in));
        } catch (Refused refused) {
            refused.problems().forEach(p -> form.refuse(p.field(), p.value(), p.rule(), p.fix()));
        }
    }

    private static String name(UploadedFile file, int number) {
        var own = Sent.fileName(file.filename());
        return own.isEmpty() ? "Photo " + (number + 1) : own;
    }

    private static Attachment photo(Page page) {
        var id = page.id("photo");
        return of(page.ranch(), page.id("about")).stream()
                .filter(one -> one.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new NotFoundResponse("This photo is not here any more."));
    }

    /** Always as the type that is drawn here, whatever a file that was imported says of itself. */
    private static void send(Page page) {
        var body = page.desk()
                .store()
                .attachments()
                .get(photo(page).sha256())
                .orElseThrow(() -> new NotFoundResponse("Its file is not here any more."));
        page.http()
                .header("Cache-Control", "private, max-age=86400, immutable")
                .contentType(Photo.TYPE)
                .result(body.bytes());
    }

    private static void delete(Page page) {
        var form = page.posted(key(page) + "/" + page.id("photo") + "/delete");
        var gone = photo(page);
        page.save(form, "Photo deleted: " + gone.name(), ranch -> ranch.withoutAttachment(gone.id()), key(page));
    }
}
