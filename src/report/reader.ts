/**
 * Who reads. For the student nothing is said that gives an answer away; the teacher is told what lies behind, and may
 * show a report in which nobody is named.
 */
export type Reader = "student" | "teacher" | "teacher without names"
