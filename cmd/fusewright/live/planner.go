package live

// plannerQuestions are those of the view; none are answered yet.
var plannerQuestions []question
