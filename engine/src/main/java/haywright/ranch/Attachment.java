package haywright.ranch;

import haywright.workings.Names;
import java.util.UUID;

/**
 * A file kept beside the document: a laboratory's PDF, a picture of a stack.
 *
 * @param about the lot, report, field or group that it belongs to
 * @param name the file's name as it came
 * @param type its media type: {@code application/pdf}
 * @param sha256 of its bytes, in lower-case hexadecimal; it is stored under this
 */
public record Attachment(UUID id, UUID about, String name, String type, String sha256) {
    public Attachment {
        Names.require("name", name, "a file");
    }

    /** A photo that somebody took, and not the file that something was read from. */
    public boolean isPicture() {
        return type.startsWith("image/");
    }
}
