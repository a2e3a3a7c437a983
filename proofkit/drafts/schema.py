"""The ledger of a book's drafts, ``proofkit.db``, as SQLite sees it: its tables, step by step.

Any program that reads SQLite can read it. Three views say it in plain words:

``every_draft``   a row a draft: when it was checked, its file, how long it is, what was found, what became
                  of what the draft before had
``every_issue``   a row an issue of a draft: where it is, what is wrong, how it stands against the drafts
                  before ("new", "still there", "back again", "let stand")
``every_ending``  a row an issue that a draft no longer has, and how it went ("fixed", "gone with its
                  text", "no longer raised")

The tables:

``draft``       one row a draft, by its ``number`` from 1. ``checked_at`` is ISO 8601 with its time zone.
                ``text_digest`` tells its text from any other, ``asked_digest`` its settings and checks.
                ``complete`` is 0 where not everything was checked; ``grade`` is Flesch-Kincaid's;
                ``against`` is the draft that it was compared with
``page``        the pages of a draft, in order; ``role`` as in a report; ``words`` counts words of story
``page_text``   each page's text, once however many drafts have it: as it is, or, where that saves a
                sixth, compressed by zlib (then its type is BLOB)
``spread``      the words of story on each spread of a draft
``matter``      what an issue says, once however many drafts have it
``issue``       the issues of a draft in the report's order. ``first`` and ``after`` count characters of its
                page's text; ``related`` lists the matter's other places as [page, first, after];
                ``changed`` is 1 where the words there were changed since the draft before
``ending``      the issues that ended with a draft: as they were last seen, in draft ``last_seen``
``tally``       how many issues of a draft have each status, errors and queries apart
``conditions``  the rulings in force and the versions of what checked, as JSON, once for all drafts alike
``past``        what ended in any draft and has not come back, as JSON: the next comparison needs it

What was written about a draft is never changed afterwards; only ``past`` moves on with the newest one.
What is kept as JSON must stay readable: a field that is added to it later needs a default.
"""

from __future__ import annotations

# "Proo" in ASCII: tells the file from those of other programs.
APPLICATION = 0x50726F6F

_TABLES = """
CREATE TABLE conditions (
    id INTEGER PRIMARY KEY,
    digest BLOB NOT NULL UNIQUE,
    rulings TEXT NOT NULL,
    versions TEXT NOT NULL
);
CREATE TABLE draft (
    number INTEGER PRIMARY KEY,
    checked_at TEXT NOT NULL,
    file TEXT NOT NULL,
    title TEXT NOT NULL,
    text_digest TEXT NOT NULL,
    asked_digest TEXT NOT NULL,
    complete INTEGER NOT NULL,
    words INTEGER NOT NULL,
    pages INTEGER NOT NULL,
    spreads INTEGER NOT NULL,
    errors INTEGER NOT NULL,
    queries INTEGER NOT NULL,
    let_stand INTEGER NOT NULL,
    grade REAL,
    against INTEGER REFERENCES draft (number),
    conditions INTEGER NOT NULL REFERENCES conditions (id)
);
CREATE TABLE page_text (
    id INTEGER PRIMARY KEY,
    digest BLOB NOT NULL UNIQUE,
    content NOT NULL
);
CREATE TABLE page (
    draft INTEGER NOT NULL REFERENCES draft (number),
    number INTEGER NOT NULL,
    text INTEGER NOT NULL REFERENCES page_text (id),
    words INTEGER NOT NULL,
    spread INTEGER,
    role TEXT NOT NULL,
    label TEXT NOT NULL,
    PRIMARY KEY (draft, number)
) WITHOUT ROWID;
CREATE TABLE spread (
    draft INTEGER NOT NULL REFERENCES draft (number),
    place INTEGER NOT NULL,
    spread INTEGER NOT NULL,
    words INTEGER NOT NULL,
    PRIMARY KEY (draft, place)
) WITHOUT ROWID;
CREATE TABLE matter (
    id INTEGER PRIMARY KEY,
    digest BLOB NOT NULL UNIQUE,
    key TEXT NOT NULL,
    "check" TEXT NOT NULL,
    tier TEXT NOT NULL,
    quote TEXT NOT NULL,
    message TEXT NOT NULL,
    confidence REAL NOT NULL
);
CREATE TABLE issue (
    draft INTEGER NOT NULL REFERENCES draft (number),
    place INTEGER NOT NULL,
    matter INTEGER NOT NULL REFERENCES matter (id),
    page INTEGER NOT NULL,
    first INTEGER NOT NULL,
    after INTEGER NOT NULL,
    status TEXT NOT NULL,
    changed INTEGER NOT NULL,
    related TEXT,
    because TEXT,
    PRIMARY KEY (draft, place)
) WITHOUT ROWID;
CREATE TABLE ending (
    draft INTEGER NOT NULL REFERENCES draft (number),
    place INTEGER NOT NULL,
    matter INTEGER NOT NULL REFERENCES matter (id),
    last_seen INTEGER NOT NULL,
    page INTEGER NOT NULL,
    first INTEGER NOT NULL,
    after INTEGER NOT NULL,
    status TEXT NOT NULL,
    was_let_stand INTEGER NOT NULL,
    PRIMARY KEY (draft, place)
) WITHOUT ROWID;
CREATE TABLE tally (
    draft INTEGER NOT NULL REFERENCES draft (number),
    tier TEXT NOT NULL,
    status TEXT NOT NULL,
    issues INTEGER NOT NULL,
    PRIMARY KEY (draft, tier, status)
) WITHOUT ROWID;
CREATE TABLE past (
    place INTEGER PRIMARY KEY,
    ended TEXT NOT NULL
);
CREATE INDEX draft_by_text ON draft (text_digest, asked_digest);
"""

_VIEWS = """
CREATE VIEW every_draft AS
SELECT
    number, checked_at, file, title, words, spreads, errors, queries, let_stand, grade,
    (SELECT total(issues) FROM tally WHERE draft = number AND status = 'new') AS new,
    (SELECT total(issues) FROM tally WHERE draft = number AND status = 'still there') AS still_there,
    (SELECT total(issues) FROM tally WHERE draft = number AND status = 'back again') AS back_again,
    (SELECT total(issues) FROM tally WHERE draft = number AND status = 'fixed') AS fixed,
    (SELECT total(issues) FROM tally WHERE draft = number AND status = 'gone with its text')
        AS gone_with_text
FROM draft ORDER BY number;
CREATE VIEW every_issue AS
SELECT
    issue.draft, issue.place, issue.status, matter.tier, issue.page, page.spread, page.label,
    matter.quote, matter.message, matter."check", matter.key, issue.because
FROM issue
JOIN matter ON matter.id = issue.matter
LEFT JOIN page ON page.draft = issue.draft AND page.number = issue.page
ORDER BY issue.draft, issue.place;
CREATE VIEW every_ending AS
SELECT
    ending.draft, ending.status, ending.last_seen, matter.tier, ending.page, matter.quote,
    matter.message, matter."check", matter.key
FROM ending JOIN matter ON matter.id = ending.matter
ORDER BY ending.draft, ending.place;
"""

# All that is told of drafts; ``page_text``, ``matter`` and ``conditions`` are what they share.
TABLES_OF_DRAFTS = ("page", "spread", "issue", "ending", "tally", "past", "draft")

# Each is taken in one transaction. A step that is out in the world is never changed: add another.
MIGRATIONS = (_TABLES, _VIEWS)
