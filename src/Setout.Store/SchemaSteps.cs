namespace Setout.Store;

/// <summary>The steps from each version of the tables to the next, as they were released; none is ever edited.</summary>
internal static class SchemaSteps
{
    /// <summary>Version 1: facts.</summary>
    public const string Facts =
        """
        CREATE TABLE pieces (
            number INTEGER PRIMARY KEY,
            name TEXT NOT NULL UNIQUE CHECK (name <> '')
        ) STRICT;

        -- One fact a row, as the text that a log holds for it; 'place' is the order of appending.
        CREATE TABLE facts (
            place INTEGER PRIMARY KEY AUTOINCREMENT,
            piece INTEGER NOT NULL REFERENCES pieces (number),
            id TEXT NOT NULL CHECK (id <> ''),
            text TEXT NOT NULL CHECK (text <> ''),
            UNIQUE (piece, id)
        ) STRICT;

        CREATE TRIGGER facts_not_edited BEFORE UPDATE ON facts
        BEGIN SELECT RAISE(ABORT, 'facts are appended, never edited'); END;
        CREATE TRIGGER facts_not_taken_out BEFORE DELETE ON facts
        BEGIN SELECT RAISE(ABORT, 'facts are appended, never taken out'); END;
        CREATE TRIGGER facts_not_replaced BEFORE INSERT ON facts
        WHEN EXISTS (SELECT 1 FROM facts WHERE (piece = NEW.piece AND id = NEW.id) OR place = NEW.place)
        BEGIN SELECT RAISE(ABORT, 'facts are appended, never replaced'); END;

        CREATE TRIGGER pieces_not_edited BEFORE UPDATE ON pieces
        BEGIN SELECT RAISE(ABORT, 'a piece keeps its name, since its facts hang on it'); END;
        CREATE TRIGGER pieces_not_taken_out BEFORE DELETE ON pieces
        BEGIN SELECT RAISE(ABORT, 'a piece is not taken out, since its facts hang on it'); END;
        CREATE TRIGGER pieces_not_replaced BEFORE INSERT ON pieces
        WHEN EXISTS (SELECT 1 FROM pieces WHERE name = NEW.name OR number = NEW.number)
        BEGIN SELECT RAISE(ABORT, 'a piece is not replaced, since its facts hang on it'); END;
        """;

    /// <summary>Version 2: documents with their states beside the facts. Nothing of version 1 is touched.</summary>
    public const string Documents =
        """
        -- 'fold' is the name without regard to large and small letters; 'piece' the log that belongs to the document, once it has facts.
        CREATE TABLE documents (
            number INTEGER PRIMARY KEY,
            id TEXT NOT NULL UNIQUE CHECK (id <> ''),
            kind TEXT NOT NULL CHECK (kind IN ('piece', 'shop')),
            name TEXT NOT NULL UNIQUE CHECK (name <> ''),
            fold TEXT NOT NULL UNIQUE CHECK (fold <> ''),
            piece INTEGER UNIQUE REFERENCES pieces (number)
        ) STRICT;

        -- A text is kept whole where 'depth' is 0; else 'text' stands between so many signs of the beginning and of the end of its parent's
        -- text, counted in UTF-16. 'sum' is the SHA-256 of the whole text in UTF-8.
        CREATE TABLE states (
            number INTEGER PRIMARY KEY AUTOINCREMENT,
            document INTEGER NOT NULL REFERENCES documents (number),
            parent INTEGER REFERENCES states (number),
            step TEXT NOT NULL,
            at TEXT NOT NULL CHECK (at <> ''),
            depth INTEGER NOT NULL CHECK (depth >= 0),
            head_kept INTEGER NOT NULL CHECK (head_kept >= 0),
            tail_kept INTEGER NOT NULL CHECK (tail_kept >= 0),
            text TEXT NOT NULL,
            sum TEXT NOT NULL CHECK (length(sum) = 64),
            CHECK (depth > 0 OR head_kept + tail_kept = 0),
            CHECK (depth = 0 OR parent IS NOT NULL)
        ) STRICT;
        CREATE INDEX states_of_document ON states (document);

        -- A change of several documents and logs, made at once. 'asked' tells whether a second one of that id asks for the same.
        CREATE TABLE changes (
            place INTEGER PRIMARY KEY AUTOINCREMENT,
            id TEXT NOT NULL UNIQUE CHECK (id <> ''),
            at TEXT NOT NULL CHECK (at <> ''),
            words TEXT NOT NULL,
            asked TEXT NOT NULL
        ) STRICT;

        -- A document as each of its revisions left it. 'head_since' and 'shelf_since' are the revisions in which the state pointed at, and
        -- name or place, were last changed.
        CREATE TABLE moves (
            document INTEGER NOT NULL REFERENCES documents (number),
            revision INTEGER NOT NULL CHECK (revision > 0),
            change INTEGER NOT NULL REFERENCES changes (place),
            kind TEXT NOT NULL CHECK (kind IN ('made', 'edited', 'undone', 'redone', 'gone-back', 'named', 'renamed', 'put-away', 'taken-back', 'restored')),
            from_state INTEGER REFERENCES states (number),
            state INTEGER NOT NULL REFERENCES states (number),
            name TEXT NOT NULL CHECK (name <> ''),
            put_away INTEGER NOT NULL CHECK (put_away IN (0, 1)),
            head_since INTEGER NOT NULL CHECK (head_since BETWEEN 1 AND revision),
            shelf_since INTEGER NOT NULL CHECK (shelf_since BETWEEN 1 AND revision),
            PRIMARY KEY (document, revision)
        ) STRICT;
        CREATE INDEX moves_from ON moves (from_state, kind, revision);
        CREATE INDEX moves_of_change ON moves (change);

        -- What was answered to a change: its documents in their revisions, in order, and in the last row how many facts were new.
        CREATE TABLE answers (
            change INTEGER NOT NULL REFERENCES changes (place),
            nr INTEGER NOT NULL,
            document INTEGER REFERENCES documents (number),
            revision INTEGER,
            facts INTEGER,
            PRIMARY KEY (change, nr),
            CHECK ((document IS NULL) = (revision IS NULL) AND (document IS NULL) = (facts IS NOT NULL))
        ) STRICT;

        CREATE TABLE save_points (
            place INTEGER PRIMARY KEY AUTOINCREMENT,
            state INTEGER NOT NULL REFERENCES states (number),
            name TEXT NOT NULL CHECK (name <> ''),
            UNIQUE (state, name)
        ) STRICT;

        CREATE TRIGGER states_not_edited BEFORE UPDATE ON states
        BEGIN SELECT RAISE(ABORT, 'states of a document are added, never edited'); END;
        CREATE TRIGGER states_not_taken_out BEFORE DELETE ON states
        BEGIN SELECT RAISE(ABORT, 'states of a document are added, never taken out'); END;
        CREATE TRIGGER states_not_replaced BEFORE INSERT ON states
        WHEN EXISTS (SELECT 1 FROM states WHERE number = NEW.number)
        BEGIN SELECT RAISE(ABORT, 'states of a document are added, never replaced'); END;

        CREATE TRIGGER changes_not_edited BEFORE UPDATE ON changes
        BEGIN SELECT RAISE(ABORT, 'changes are added, never edited'); END;
        CREATE TRIGGER changes_not_taken_out BEFORE DELETE ON changes
        BEGIN SELECT RAISE(ABORT, 'changes are added, never taken out'); END;
        CREATE TRIGGER changes_not_replaced BEFORE INSERT ON changes
        WHEN EXISTS (SELECT 1 FROM changes WHERE place = NEW.place OR id = NEW.id)
        BEGIN SELECT RAISE(ABORT, 'changes are added, never replaced'); END;

        CREATE TRIGGER moves_not_edited BEFORE UPDATE ON moves
        BEGIN SELECT RAISE(ABORT, 'moves of a document are added, never edited'); END;
        CREATE TRIGGER moves_not_taken_out BEFORE DELETE ON moves
        BEGIN SELECT RAISE(ABORT, 'moves of a document are added, never taken out'); END;
        CREATE TRIGGER moves_not_replaced BEFORE INSERT ON moves
        WHEN EXISTS (SELECT 1 FROM moves WHERE document = NEW.document AND revision = NEW.revision)
        BEGIN SELECT RAISE(ABORT, 'moves of a document are added, never replaced'); END;

        CREATE TRIGGER answers_not_edited BEFORE UPDATE ON answers
        BEGIN SELECT RAISE(ABORT, 'answers are added, never edited'); END;
        CREATE TRIGGER answers_not_taken_out BEFORE DELETE ON answers
        BEGIN SELECT RAISE(ABORT, 'answers are added, never taken out'); END;
        CREATE TRIGGER answers_not_replaced BEFORE INSERT ON answers
        WHEN EXISTS (SELECT 1 FROM answers WHERE change = NEW.change AND nr = NEW.nr)
        BEGIN SELECT RAISE(ABORT, 'answers are added, never replaced'); END;

        CREATE TRIGGER save_points_not_edited BEFORE UPDATE ON save_points
        BEGIN SELECT RAISE(ABORT, 'save points are added, never edited'); END;
        CREATE TRIGGER save_points_not_taken_out BEFORE DELETE ON save_points
        BEGIN SELECT RAISE(ABORT, 'save points are added, never taken out'); END;
        CREATE TRIGGER save_points_not_replaced BEFORE INSERT ON save_points
        WHEN EXISTS (SELECT 1 FROM save_points WHERE place = NEW.place OR (state = NEW.state AND name = NEW.name))
        BEGIN SELECT RAISE(ABORT, 'save points are added, never replaced'); END;

        CREATE TRIGGER documents_keep BEFORE UPDATE ON documents
        WHEN NEW.number <> OLD.number OR NEW.id <> OLD.id OR NEW.kind <> OLD.kind OR (OLD.piece IS NOT NULL AND NEW.piece IS NOT OLD.piece)
            OR EXISTS (SELECT 1 FROM documents WHERE number <> OLD.number AND (name = NEW.name OR fold = NEW.fold OR piece = NEW.piece))
        BEGIN SELECT RAISE(ABORT, 'of a document only the name changes'); END;
        CREATE TRIGGER documents_not_taken_out BEFORE DELETE ON documents
        BEGIN SELECT RAISE(ABORT, 'documents are put away, never taken out'); END;
        CREATE TRIGGER documents_not_replaced BEFORE INSERT ON documents
        WHEN EXISTS (SELECT 1 FROM documents WHERE number = NEW.number OR id = NEW.id OR name = NEW.name OR fold = NEW.fold OR piece = NEW.piece)
        BEGIN SELECT RAISE(ABORT, 'documents are added, never replaced'); END;
        """;
}
