package haywright.app.store;

import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.app.document.Fingerprint;
import haywright.app.document.RanchDocument;
import haywright.app.exchange.InputFile;
import haywright.ranch.Attachment;
import haywright.ranch.Ranch;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;

/**
 * Ranches in and out of the house as files: one document, or a copy of all of them.
 *
 * <p>What comes in under an id that is here already is saved as an edit of that ranch, so that it can be taken back;
 * nothing is ever replaced beyond recall. An exported document carries its files inside it.
 */
public final class RanchFiles {
    private static final Object ONE = new Object();

    private final Ranches ranches;
    private final Attachments attachments;
    private final RanchDocument documents;
    private final Recovery recovery;
    private final Backup backup;

    RanchFiles(Ranches ranches, Attachments attachments, RanchDocument documents, Recovery recovery, Backup backup) {
        this.ranches = ranches;
        this.attachments = attachments;
        this.documents = documents;
        this.recovery = recovery;
        this.backup = backup;
    }

    /** What became of a ranch in a file. */
    public enum Became {
        /** It was not here before. */
        NEW,
        /** It was here and is now as in the file; that can be taken back. */
        CHANGED,
        /** It was here and could not be read, and is now as in the file; what stood there is kept beside. */
        MENDED,
        /** It was here just so; nothing was changed. */
        SAME,
        /** It is put away in the file and was left here as it is. */
        LEFT_DELETED,
        /** It cannot be read in the file and was left here as it is. */
        LEFT_UNREADABLE
    }

    /** @param wrong why it cannot be read, in a sentence; empty where it can */
    public record Imported(UUID id, String name, Became became, String wrong) {
        public Imported(UUID id, String name, Became became) {
            this(id, name, became, "");
        }

        public boolean isNew() {
            return became == Became.NEW;
        }
    }

    /** Everything that is wrong with a document; files that are not in it alone do not keep it from being imported. */
    public List<Problem> check(Path file) {
        try {
            var read = read(file);
            var inside = read.bodies().stream()
                    .map(body -> Fingerprint.sha256(body.bytes()))
                    .collect(Collectors.toSet());
            return read.ranch().attachments().values().stream()
                    .filter(one -> !inside.contains(one.sha256()))
                    .map(one -> new Problem(
                            "attachments/" + one.id(),
                            one.name(),
                            "its file is not in here",
                            "The ranch can be imported without it; look for it in an older export or a backup"))
                    .toList();
        } catch (Refused e) {
            return e.problems();
        }
    }

    /** @throws Refused naming everything that is wrong with it; nothing is kept then */
    public Imported importFile(Path file, String who, boolean replace) {
        return take(file, who, "Imported from " + file.getFileName(), replace);
    }

    /** A document is many times its size in memory: one is read after the other, whoever sends them at once. */
    public Imported take(Path document, String who, String words, boolean replace) {
        synchronized (ONE) {
            return take(read(document), who, words, replace);
        }
    }

    /**
     * @param document bytes of an exported ranch, as a form uploads them
     * @param replace whether it may take the place of what stands here under its id; otherwise that is refused where the
     *     two differ
     */
    public Imported take(byte[] document, String who, String words, boolean replace) {
        return take(read(document), who, words, replace);
    }

    private Imported take(Read read, String who, String words, boolean replace) {
        if (!replace) {
            standsAlone(read.ranch());
        }
        return keep(read, who, words);
    }

    private void standsAlone(Ranch ranch) {
        if (ranches.list().stream().anyMatch(r -> r.id().equals(ranch.id()))) {
            if (recovery.wrong(ranch.id()).isPresent()) {
                throw new Refused(
                        "file",
                        ranch.name(),
                        "this ranch is here already and cannot be read; the file may be older (in it %s)"
                                .formatted(holds(ranch)),
                        "Open the ranch first: its page may have a newer way back. To put the file in its place, send"
                                + " it again and say so: replace the ranch that is here (on the command line: --replace)."
                                + " What cannot be read is kept.");
            }
            var here = ranches.open(ranch.id()).ranch();
            if (!here.equals(ranch)) {
                throw new Refused(
                        "file",
                        ranch.name(),
                        "this ranch is here already and differs from the file, which may be older (here %s; in the file %s)"
                                .formatted(holds(here), holds(ranch)),
                        "To put the file in its place all the same, send it again and say so: replace the ranch that is"
                                + " here (on the command line: --replace). That can be taken back under History.");
            }
        }
    }

    /** What is in a ranch, in a few words, to tell two versions of it apart. */
    public static String holds(Ranch ranch) {
        return "lots: %d, reports: %d, groups: %d"
                .formatted(
                        ranch.lots().size(),
                        ranch.reports().size(),
                        ranch.groups().size());
    }

    /** The document with its files inside; one that cannot be read exactly as it is kept. */
    public String export(UUID id) {
        try {
            return export(ranches.open(id).ranch());
        } catch (Refused e) {
            if (ranches.isHere(id)) {
                return recovery.raw(id).doc();
            }
            throw e;
        }
    }

    /** The same, however large what cannot be read is. */
    public InputStream exported(UUID id) {
        return ranches.isHere(id) && recovery.wrong(id).isPresent()
                ? recovery.whole(id)
                : new ByteArrayInputStream(export(id).getBytes(StandardCharsets.UTF_8));
    }

    private String export(Ranch ranch) {
        var tree = documents.tree(ranch);
        var inside = new HashSet<String>(); // a file that brought several reports travels once
        for (var attachment : ranch.attachments().values()) {
            attachments
                    .get(attachment.sha256())
                    .filter(body -> inside.add(attachment.sha256()))
                    .ifPresent(body -> attachmentNode(tree, attachment)
                            .put("body", Base64.getEncoder().encodeToString(body.bytes())));
        }
        return documents.print(tree);
    }

    /** What the ranch speaks of and whose file is not here any more: no export can have it. */
    public List<String> missing(UUID id) {
        return ranches.isHere(id) && recovery.wrong(id).isEmpty()
                ? ranches.open(id).ranch().attachments().values().stream()
                        .filter(one -> !attachments.isHere(one.sha256()))
                        .map(Attachment::name)
                        .toList()
                : List.of();
    }

    private static ObjectNode attachmentNode(ObjectNode tree, Attachment attachment) {
        return (ObjectNode) tree.path("attachments").path(attachment.id().toString());
    }

    /** Writes beside the place first and moves then: a full disk leaves the old file whole. */
    public void exportTo(UUID id, Path file) {
        MayReplace.export(file);
        try (var document = exported(id)) {
            WholeFile.write(file, beside -> {
                try (OutputStream out = Files.newOutputStream(beside)) {
                    document.transferTo(out);
                }
            });
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Everything, as {@link Backup} says.
     *
     * @throws Refused where anything but an earlier backup stands there, or that would give way to one of no ranch
     */
    public void backup(Path file) {
        MayReplace.backup(file);
        if (Files.isRegularFile(file)
                && ranches.list().isEmpty()
                && ranches.deleted().isEmpty()) {
            throw new Refused(
                    "file",
                    file.toString(),
                    "there is no ranch here, and a backup of none does not take the place of a file",
                    "Are these the right data? Name yours with --data.");
        }
        WholeFile.write(file, backup::write);
    }

    /**
     * Takes everything in a backup or a daily copy of the database: a ranch that is not here with its history, one that
     * is here as an edit that can be taken back.
     *
     * @return each ranch in it and what became of it
     * @throws Refused when the file cannot be read; nothing is kept then
     */
    public List<Imported> restore(Path file, String who) {
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            throw WholeFile.notRegular(file);
        }
        var words = "Restored from " + file.getFileName();
        if (isDatabase(file)) {
            return some(file, backup.takeIn(file, documents, ranch -> keep(new Read(ranch, List.of()), who, words)));
        }
        if (isDocument(file)) {
            throw new Refused(
                    "file",
                    file.toString(),
                    "this is one ranch as it is exported, and no backup",
                    "Take it in with: ranch import FILE.");
        }
        return some(file, fromZip(file)).stream()
                .map(read -> keep(read, who, words))
                .toList();
    }

    private static <T> List<T> some(Path file, List<T> found) {
        if (found.isEmpty()) {
            throw new Refused("file", file.toString(), "there is no ranch in this file", "Is it another file?");
        }
        return found;
    }

    private record Read(Ranch ranch, List<Attachments.Body> bodies) {}

    private Read read(Path file) {
        InputFile.check(file);
        try {
            long most = Runtime.getRuntime().maxMemory() / 4;
            if (Files.size(file) > most) {
                throw new Refused(
                        "file",
                        file.toString(),
                        "it holds more than %d MB, which is more than can be read at once"
                                .formatted(most / 1024 / 1024),
                        "Is it the right file?");
            }
            return read(documents.tree(file));
        } catch (IOException e) {
            throw unreadable(file, e);
        }
    }

    private Read read(byte[] document) {
        return read(documents.tree(document));
    }

    private Read read(ObjectNode tree) {
        var texts = new ArrayList<String>();
        tree.path("attachments").forEach(node -> {
            if (node instanceof ObjectNode entry) {
                texts.add(entry.path("body").asText());
                entry.remove("body");
            }
        });
        var ranch = documents.ranch(tree);
        var bodies = new LinkedHashMap<String, Attachments.Body>();
        int number = 0;
        for (var attachment : ranch.attachments().values()) {
            var text = texts.get(number++);
            if (!text.isEmpty()) {
                bodies.put(attachment.sha256(), body(attachment, text));
            }
        }
        return new Read(ranch, List.copyOf(bodies.values()));
    }

    private Attachments.Body body(Attachment attachment, String text) {
        byte[] bytes;
        try {
            bytes = Base64.getDecoder().decode(text);
        } catch (IllegalArgumentException e) {
            throw damaged(attachment, "its body is not base64");
        }
        if (Fingerprint.sha256(bytes).equals(attachment.sha256())) {
            return new Attachments.Body(attachment.type(), bytes);
        }
        throw damaged(attachment, "its body is not what was saved");
    }

    private static Refused damaged(Attachment attachment, String rule) {
        return new Refused(
                "attachments/" + attachment.id() + "/body",
                attachment.name(),
                rule,
                "Export the ranch again, or take this entry out.");
    }

    private Imported keep(Read read, String who, String words) {
        read.bodies().forEach(attachments::keep);
        var ranch = read.ranch();
        boolean wasPutAway = ranches.deleted().stream().anyMatch(r -> r.id().equals(ranch.id()));
        if (wasPutAway) {
            ranches.restore(ranch.id());
        }
        Became became;
        if (ranches.list().stream().noneMatch(r -> r.id().equals(ranch.id()))) {
            ranches.create(ranch);
            became = Became.NEW;
        } else if (recovery.wrong(ranch.id()).isPresent()) {
            recovery.putInPlace(ranch, who, words);
            became = Became.MENDED;
        } else {
            became = replace(ranch, who, words) || wasPutAway ? Became.CHANGED : Became.SAME;
        }
        return new Imported(ranch.id(), ranch.name(), became);
    }

    /**
     * On what stands at that moment, as one edit; taking it back brings back whatever stood there.
     *
     * @return false where just that stood there
     */
    private boolean replace(Ranch ranch, String who, String words) {
        for (int tries = 0; tries < Ranches.MOST_TRIES; tries++) {
            long rev = ranches.open(ranch.id()).rev();
            if (ranches.save(ranch.id(), rev, who, words, ranch) instanceof SaveAnswer.Saved saved) {
                return saved.rev() > rev;
            }
        }
        throw Ranches.neverStill(ranch.id());
    }

    private List<Read> fromZip(Path zip) {
        try {
            return Zipped.read(zip, this::read);
        } catch (IOException e) {
            throw unreadable(zip, e);
        }
    }

    private static boolean isDatabase(Path file) {
        InputFile.check(file);
        try (InputStream in = Files.newInputStream(file)) {
            return new String(in.readNBytes(15), StandardCharsets.US_ASCII).equals("SQLite format 3");
        } catch (IOException e) {
            throw unreadable(file, e);
        }
    }

    /** Whether a file is meant for one ranch, whatever is wrong with it. */
    public static boolean isDocument(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            return new String(in.readNBytes(64), StandardCharsets.UTF_8)
                    .replace("\ufeff", "")
                    .stripLeading()
                    .startsWith("{");
        } catch (IOException e) {
            throw unreadable(file, e);
        }
    }

    static Refused unreadable(Path file, IOException e) {
        boolean missing = e instanceof NoSuchFileException;
        return new Refused(
                "file",
                file.toString(),
                missing ? "there is no such file" : "this file cannot be read: " + e.getMessage(),
                "Check its name and place.");
    }
}
